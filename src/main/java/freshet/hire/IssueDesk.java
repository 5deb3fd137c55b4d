package freshet.hire;

import freshet.places.Customer;
import freshet.places.Places;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** Puts on a page what the fields of a unit that goes out or comes back need. */
@Component
class IssueDesk {

    private final Readings readings;
    private final Places places;

    IssueDesk(Readings readings, Places places) {
        this.readings = readings;
        this.places = places;
    }

    void lay(Model model, IssueCheck check) {
        Unit unit = check.unit();
        model.addAttribute("pump", unit);
        model.addAttribute("check", check);
        model.addAttribute("cautions", Caution.of(unit));
        model.addAttribute(
                "outLast", readings.log(unit.id(), MeterKind.RUN_HOURS).last());
        model.addAttribute("outTank", tank(unit));
        model.addAttribute(
                "names", places.customers().stream().map(Customer::name).toList());
    }

    void lay(Model model, Hire hire, Unit unit) {
        model.addAttribute("hire", hire);
        model.addAttribute("backUnit", unit);
        model.addAttribute(
                "backLast", readings.log(unit.id(), MeterKind.RUN_HOURS).last());
        model.addAttribute("backTank", tank(unit));
        model.addAttribute("liquids", Liquid.values());
    }

    /** What is looked at beside the meter: fuel, charge, or nothing. */
    private static String tank(Unit unit) {
        return switch (unit.model().drive()) {
            case ENGINE -> "fuel";
            case BATTERY -> "charge";
            default -> "";
        };
    }
}

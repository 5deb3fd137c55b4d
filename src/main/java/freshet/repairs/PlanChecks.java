package freshet.repairs;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused.Wrong;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is wrong with a plan, at the field that it stands in. */
final class PlanChecks {

    private static final int LONGEST_WORDS = 2000;
    private static final int LONGEST_NAME = 200;
    private static final int MOST_PARTS = 50;
    private static final int MOST_MINUTES = 10_000;
    private static final int MOST_LEAD_DAYS = 365;
    private static final int MOST_YEARS = 50;
    private static final BigDecimal MOST_MONEY = new BigDecimal("999999.99");
    private static final BigDecimal MOST_PIECES = new BigDecimal("9999.99");

    private final List<Wrong> wrongs = new ArrayList<>();

    static List<Wrong> wrongs(RepairPlan plan) {
        PlanChecks checks = new PlanChecks();
        checks.look(plan);
        return checks.wrongs;
    }

    private void look(RepairPlan plan) {
        if (plan.findingIds().isEmpty()) {
            wrongs.add(at("findings", "repairs.findings.missing"));
        }
        words("what", plan.what(), LONGEST_WORDS);
        range("labourMinutes", plan.labourMinutes(), 0, MOST_MINUTES);
        money("labourRate", plan.labourRate());
        money("otherCost", plan.otherCost());
        money("priceNew", plan.priceNew());
        if (plan.priceNew() != null && plan.priceNew().signum() == 0) {
            wrongs.add(at("priceNew", "repairs.priceNew.zero"));
        }
        range("lifeYears", plan.lifeYears(), 1, MOST_YEARS);
        if (plan.parts().size() > MOST_PARTS) {
            wrongs.add(at("", "repairs.parts.many", MOST_PARTS));
        }
        for (int i = 0; i < plan.parts().size(); i++) {
            look(plan.parts().get(i), "parts[" + i + "].");
        }
    }

    private void look(Part part, String path) {
        if (part.description().isBlank()) {
            wrongs.add(at(path + "description", "repairs.part.description.missing"));
        }
        words(path + "description", part.description(), LONGEST_NAME);
        words(path + "number", part.number(), LONGEST_NAME);
        if (part.quantity().signum() <= 0) {
            wrongs.add(at(path + "quantity", "repairs.part.quantity.zero"));
        } else if (tooFine(part.quantity()) || part.quantity().compareTo(MOST_PIECES) > 0) {
            wrongs.add(at(path + "quantity", "repairs.amount", MOST_PIECES));
        }
        money(path + "unitPrice", part.unitPrice());
        range(path + "leadDays", part.leadDays(), 0, MOST_LEAD_DAYS);
        if (part.orderedOn() != null
                && part.expectedOn() != null
                && part.expectedOn().isBefore(part.orderedOn())) {
            wrongs.add(at(path + "expectedOn", "repairs.part.expectedOn.early"));
        }
        if (part.orderedOn() != null
                && part.arrivedOn() != null
                && part.arrivedOn().isBefore(part.orderedOn())) {
            wrongs.add(at(path + "arrivedOn", "repairs.part.arrivedOn.early"));
        }
    }

    private void words(String field, @Nullable String words, int longest) {
        if (words != null && words.length() > longest) {
            wrongs.add(at(field, "repairs.long", longest));
        }
    }

    private void range(String field, @Nullable Integer number, int least, int most) {
        if (number != null && (number < least || number > most)) {
            wrongs.add(at(field, "repairs.range", least, most));
        }
    }

    private void money(String field, @Nullable BigDecimal amount) {
        if (amount != null && (amount.signum() < 0 || amount.compareTo(MOST_MONEY) > 0 || tooFine(amount))) {
            wrongs.add(at(field, "repairs.amount", MOST_MONEY));
        }
    }

    private static boolean tooFine(BigDecimal amount) {
        return amount.stripTrailingZeros().scale() > 2;
    }
}

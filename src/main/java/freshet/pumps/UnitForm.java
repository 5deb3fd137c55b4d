package freshet.pumps;

import freshet.people.Person;
import freshet.people.Typed;
import java.time.LocalDate;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed about a unit; {@code place} and {@code spot} only where it is registered. */
record UnitForm(
        @Nullable String tag,
        @Nullable String serial,
        @Nullable Long modelId,
        @Nullable String customer,
        @Nullable String inCareFrom,
        @Nullable String place,
        @Nullable String spot,
        @Nullable String note,
        @Nullable Integer version) {

    static UnitForm blank(@Nullable Long modelId, LocalDate today) {
        return new UnitForm(null, null, modelId, null, today.toString(), null, null, null, null);
    }

    static UnitForm of(Unit unit) {
        return new UnitForm(
                unit.tag(),
                unit.serial(),
                unit.model().id(),
                unit.customerName(),
                unit.inCareFrom().toString(),
                null,
                null,
                unit.note(),
                unit.version());
    }

    /** A unit that was typed, with its place where that was asked. */
    record Read(UnitDraft unit, @Nullable Whereabouts at) {}

    Read read(Directory directory, boolean withPlace, Person me) {
        Typed typed = new Typed(me);
        LocalDate day = typed.required("inCareFrom", typed.day("inCareFrom", inCareFrom), "pumps.missing");
        typed.required("modelId", modelId, "pumps.choose.model");
        typed.required("tag", Typed.text(tag), "pumps.missing");
        Long customerId = directory.customerId("customer", customer, typed);
        Whereabouts at = withPlace ? directory.whereabouts("place", place, spot, typed) : null;
        typed.refuseIfWrong();
        return new Read(
                new UnitDraft(
                        Typed.textOrEmpty(tag),
                        Typed.text(serial),
                        Objects.requireNonNull(modelId),
                        customerId,
                        Objects.requireNonNull(day),
                        Typed.text(note)),
                at);
    }
}

package freshet.readings;

import static freshet.people.Refused.Wrong.at;

import freshet.measures.Show;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.Meter.Point;
import freshet.readings.MeterLog.What;
import freshet.readings.MeterTable.Key;
import freshet.readings.MeterTable.NewReading;
import freshet.readings.MeterTable.StoredReading;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Writes readings down after holding them against all that the unit's meters have shown; works inside the door's transaction. */
@Component
class Meters {

    private final MeterTable table;
    private final Pumps pumps;
    private final People people;
    private final Clock clock;

    Meters(MeterTable table, Pumps pumps, People people, Clock clock) {
        this.table = table;
        this.pumps = pumps;
        this.people = people;
        this.clock = clock;
    }

    /**
     * Takes all of these readings or, when any is refused, none: the caller then rolls back. They may come in any order; each is held
     * against the others too.
     */
    ReadingsTaken take(List<ReadingDraft> drafts, Person by) {
        Map<Long, Unit> units = units(drafts);
        List<ReadingsTaken.Row> refused = new ArrayList<>();
        List<Integer> inOrder = new ArrayList<>();
        for (int row = 0; row < drafts.size(); row++) {
            ReadingDraft draft = drafts.get(row);
            Wrong wrong = units.containsKey(draft.unitId())
                    ? MeterHistory.shape(draft, clock.instant())
                    : at("unit", "readings.unit.unknown");
            if (wrong == null) {
                inOrder.add(row);
            } else {
                refused.add(new ReadingsTaken.Row(row, worded(wrong, by, units.get(draft.unitId()))));
            }
        }
        inOrder.sort(Comparator.comparing(row -> drafts.get(row).at()));
        Map<Key, MeterHistory> histories =
                held(inOrder.stream().map(drafts::get).toList());

        List<NewReading> news = new ArrayList<>();
        int same = 0;
        for (int row : inOrder) {
            ReadingDraft draft = drafts.get(row);
            MeterHistory history = histories.get(new Key(draft.unitId(), draft.kind()));
            Wrong wrong = history.objection(draft);
            if (wrong != null) {
                refused.add(new ReadingsTaken.Row(row, worded(wrong, by, units.get(draft.unitId()))));
                continue;
            }
            Meter meter = history.on(draft.at());
            if (meter.readingAt(draft.at()) != null) {
                same++;
            } else {
                meter.add(new Point(draft.at(), What.READ, draft.value(), draft.rolledOver()));
                news.add(new NewReading(meter, draft));
            }
        }
        if (!refused.isEmpty()) {
            refused.sort(Comparator.comparingInt(ReadingsTaken.Row::index));
            return new ReadingsTaken(0, 0, refused);
        }
        table.write(news, clock.instant(), by.id());
        return new ReadingsTaken(news.size(), same, List.of());
    }

    /** All meters concerned, held until the transaction ends; a unit without one gets one that nobody saw fitted. */
    private Map<Key, MeterHistory> held(List<ReadingDraft> inOrder) {
        Map<Key, ReadingDraft> first = new HashMap<>();
        inOrder.forEach(draft -> first.putIfAbsent(new Key(draft.unitId(), draft.kind()), draft));
        Set<Long> unitIds = inOrder.stream().map(ReadingDraft::unitId).collect(Collectors.toSet());
        table.supposeMeters(first.values());
        table.hold(unitIds);
        return table.histories(unitIds);
    }

    void fit(
            long unitId,
            MeterKind kind,
            Instant when,
            BigDecimal firstValue,
            @Nullable BigDecimal rollsOverAt,
            @Nullable String note,
            Person by) {
        Unit unit = pumps.unit(unitId);
        MeterHistory history = heldHistory(unitId, kind);
        if (history.present() != null) {
            refuse(at("", "readings.meter.there", history.present().fittedAt), by, unit);
        }
        refuse(MeterHistory.shapeOfMeter(kind, firstValue, rollsOverAt), by, unit);
        refuse(MeterHistory.future(when, clock.instant()), by, unit);
        table.fit(unitId, kind, when, firstValue, rollsOverAt, note);
        people.note(by, "meter fitted", "unit:" + unitId, kind + " " + firstValue.toPlainString());
    }

    /** Ends the present meter at its last value and begins the next at its first; sent twice, it is done once. */
    void swap(
            long unitId,
            MeterKind kind,
            Instant when,
            BigDecimal lastValue,
            BigDecimal firstValue,
            @Nullable BigDecimal rollsOverAt,
            @Nullable String note,
            Person by) {
        Unit unit = pumps.unit(unitId);
        MeterHistory history = heldHistory(unitId, kind);
        if (history.swappedAlready(when, lastValue, firstValue)) {
            return;
        }
        refuse(MeterHistory.shape("lastValue", kind, lastValue), by, unit);
        refuse(MeterHistory.shapeOfMeter(kind, firstValue, rollsOverAt), by, unit);
        refuse(MeterHistory.future(when, clock.instant()), by, unit);
        Meter old = history.present();
        if (old == null) {
            throw Refused.because("", "readings.meter.none");
        }
        refuse(old.objectionToRemoval(when, lastValue), by, unit);
        table.remove(old.id, when, lastValue);
        table.fit(unitId, kind, when, firstValue, rollsOverAt, note);
        people.note(
                by,
                "meter swapped",
                "unit:" + unitId,
                kind + " " + lastValue.toPlainString() + " -> " + firstValue.toPlainString());
    }

    void withdraw(long unitId, long readingId, String why, Person by) {
        Unit unit = pumps.unit(unitId);
        table.hold(Set.of(unitId));
        for (MeterKind kind : MeterKind.values()) {
            for (StoredReading reading : table.readings(unitId, kind)) {
                if (reading.id() == readingId && reading.withdrawnWhy() == null) {
                    if (why.isBlank()) {
                        throw Refused.because("why", "readings.why.missing");
                    }
                    MeterHistory history = table.histories(Set.of(unitId)).get(new Key(unitId, kind));
                    if (!history.standsWithout(reading)) {
                        throw Refused.because("why", "readings.withdraw.carries");
                    }
                    table.withdraw(readingId, clock.instant(), by.id(), why.strip());
                    people.note(by, "reading withdrawn", "unit:" + unit.id(), kind + " " + reading.value());
                    return;
                }
            }
        }
        throw new NotFound("reading", readingId);
    }

    List<MeterFact> facts(Collection<Long> unitIds) {
        return table.facts(unitIds);
    }

    MeterLog log(long unitId, MeterKind kind) {
        return history(unitId, kind).log(unitId, kind, table.readings(unitId, kind));
    }

    List<MeterLog> logs(MeterKind kind, Collection<Long> unitIds) {
        return table.histories(unitIds).entrySet().stream()
                .filter(each -> each.getKey().kind() == kind)
                .map(each -> each.getValue().log(each.getKey().unitId(), kind, List.of()))
                .filter(log -> log.last() != null)
                .toList();
    }

    Optional<DutyCycle> dutyCycle(long unitId) {
        Unit unit = pumps.unit(unitId);
        return WorkDone.between(log(unitId, MeterKind.RUN_HOURS), log(unitId, MeterKind.STARTS))
                .cycle(unit.model().ratings());
    }

    private MeterHistory heldHistory(long unitId, MeterKind kind) {
        table.hold(Set.of(unitId));
        return history(unitId, kind);
    }

    private MeterHistory history(long unitId, MeterKind kind) {
        return table.histories(Set.of(unitId)).getOrDefault(new Key(unitId, kind), new MeterHistory(List.of()));
    }

    private Map<Long, Unit> units(Collection<ReadingDraft> drafts) {
        Set<Long> ids = drafts.stream().map(ReadingDraft::unitId).collect(Collectors.toSet());
        return pumps.units(ids).stream().collect(Collectors.toMap(Unit::id, unit -> unit));
    }

    private void refuse(@Nullable Wrong wrong, Person by, Unit unit) {
        if (wrong != null) {
            throw new Refused(List.of(worded(wrong, by, unit)));
        }
    }

    /** The same wrong with its moments as the unit's place tells time and its values as a meter shows them. */
    private Wrong worded(Wrong wrong, Person reader, @Nullable Unit unit) {
        ZoneId zone = unit == null ? clock.getZone() : unit.stand().zone();
        Show show = new Show(reader.unitSystem(), LocaleContextHolder.getLocale(), LocalDate.now(clock.withZone(zone)));
        return new Wrong(
                wrong.field(),
                wrong.code(),
                wrong.arguments().stream().map(said -> said(said, show, zone)).toList());
    }

    private static Object said(Object argument, Show show, ZoneId zone) {
        if (argument instanceof Instant moment) {
            return show.dayTime(moment, zone);
        }
        return argument instanceof BigDecimal value ? value.stripTrailingZeros().toPlainString() : argument.toString();
    }
}

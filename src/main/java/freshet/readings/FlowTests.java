package freshet.readings;

import freshet.hydraulics.FlowTestReduction.Reason;
import freshet.hydraulics.OutOfRange;
import freshet.measures.Show;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.pumps.Model;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.FlowTestResult.Figures;
import freshet.readings.FlowTestResult.Remark;
import freshet.readings.FlowTestWorking.Compared;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Keeps flow tests and works out what they say; works inside the door's transaction. */
@Component
class FlowTests {

    private static final double SPREAD_TOO_WIDE = 0.08;
    private static final double SPREAD_WIDE = 0.05;
    private static final double METER_MAY_DIFFER = 0.10;

    private final FlowTestRepository tests;
    private final Pumps pumps;
    private final People people;
    private final Clock clock;

    FlowTests(FlowTestRepository tests, Pumps pumps, People people, Clock clock) {
        this.tests = tests;
        this.pumps = pumps;
        this.people = people;
        this.clock = clock;
    }

    FlowTestResult workOut(FlowTestDraft draft, Person by) {
        Unit unit = pumps.unit(draft.unitId());
        List<Wrong> wrongs = new FlowTestChecks(draft, unit.model(), show(by, unit)).wrongs(clock.instant());
        Refused.ifAny(wrongs);
        List<FlowTestDraft> standing = standing(unit.id());
        FlowTestWorking working = new FlowTestWorking(unit.model(), standing.isEmpty() ? null : standing.get(0));
        int before = (int)
                standing.stream().filter(test -> test.at().isBefore(draft.at())).count();
        return worked(working, unit.model(), null, draft, before, null);
    }

    /** Keeps a test; the same test sent twice is kept once. */
    long record(FlowTestDraft draft, Person by) {
        tests.hold(draft.unitId());
        Optional<FlowTest> there = tests.standingAt(draft.unitId(), draft.at());
        if (there.isPresent()) {
            if (there.get().facts().equals(draft)) {
                return there.get().id;
            }
            throw Refused.because("at", "readings.test.there");
        }
        workOut(draft, by);
        return tests.saveAndFlush(new FlowTest(draft, by.id(), clock.instant())).id;
    }

    /** Takes a test back; taken back already, nothing changes. */
    Optional<FlowTest> withdraw(long id, String why, Person by) {
        FlowTest test = tests.findById(id).orElseThrow(() -> new NotFound("flow test", id));
        if (!test.stands()) {
            return Optional.empty();
        }
        if (why.isBlank()) {
            throw Refused.because("why", "readings.why.missing");
        }
        test.withdraw(clock.instant(), by.id(), why.strip());
        people.note(by, "flow test withdrawn", "unit:" + test.unitId, why.strip());
        return Optional.of(tests.saveAndFlush(test));
    }

    FlowTestResult result(long id) {
        FlowTest test = tests.findById(id).orElseThrow(() -> new NotFound("flow test", id));
        return results(test.unitId).stream()
                .filter(result -> result.id() != null && result.id() == id)
                .findFirst()
                .orElseThrow();
    }

    /** All tests of a unit, newest first, those that were withdrawn too. */
    List<FlowTestResult> results(long unitId) {
        Model model = pumps.unit(unitId).model();
        List<FlowTest> oldestFirst = tests.findByUnitIdOrderByAtAscIdAsc(unitId);
        FlowTestWorking working = new FlowTestWorking(
                model,
                oldestFirst.stream()
                        .filter(FlowTest::stands)
                        .map(FlowTest::facts)
                        .findFirst()
                        .orElse(null));
        List<FlowTestResult> results = new ArrayList<>();
        int before = 0;
        for (FlowTest test : oldestFirst) {
            results.add(worked(working, model, test.id, test.facts(), before, test));
            before += test.stands() ? 1 : 0;
        }
        Collections.reverse(results);
        return results;
    }

    TestPlot plot(long unitId) {
        List<FlowTest> newestFirst = new ArrayList<>(tests.findByUnitIdOrderByAtAscIdAsc(unitId).stream()
                .filter(FlowTest::stands)
                .toList());
        Collections.reverse(newestFirst);
        return TestPlot.of(pumps.unit(unitId).model(), newestFirst);
    }

    /** The lines of many units at once. */
    Map<Long, TestPlot.OwnLine> lines(Collection<Unit> units) {
        Map<Long, Model> models = units.stream().collect(Collectors.toMap(Unit::id, Unit::model));
        Map<Long, List<FlowTest>> newestFirst =
                tests.findByUnitIdInAndWithdrawnAtIsNullOrderByAtDescIdDesc(models.keySet()).stream()
                        .collect(Collectors.groupingBy(test -> test.unitId));
        Map<Long, TestPlot.OwnLine> lines = new HashMap<>();
        newestFirst.forEach((unitId, its) -> {
            TestPlot.OwnLine line =
                    TestPlot.of(Objects.requireNonNull(models.get(unitId)), its).line();
            if (line != null) {
                lines.put(unitId, line);
            }
        });
        return lines;
    }

    Map<Long, Capacity> capacities(Collection<Long> unitIds) {
        if (unitIds.isEmpty()) {
            return Map.of();
        }
        List<FlowTestRepository.Ends> ends = tests.ends(unitIds);
        Map<Long, FlowTest> byId = tests
                .findAllById(ends.stream()
                        .flatMap(end -> Stream.of(end.firstId(), end.latestId()))
                        .distinct()
                        .toList())
                .stream()
                .collect(Collectors.toMap(test -> test.id, test -> test));
        Map<Long, Model> models = pumps
                .units(ends.stream().map(FlowTestRepository.Ends::unitId).toList())
                .stream()
                .collect(Collectors.toMap(Unit::id, Unit::model));
        Map<Long, Capacity> capacities = new HashMap<>();
        for (FlowTestRepository.Ends end : ends) {
            FlowTestDraft latest = byId.get(end.latestId()).facts();
            FlowTestWorking working = new FlowTestWorking(
                    models.get(end.unitId()), byId.get(end.firstId()).facts());
            try {
                Capacity capacity = working.compared(latest, working.figures(latest))
                        .capacity(
                                end.unitId(),
                                end.latestId(),
                                latest,
                                end.tests().intValue());
                if (capacity != null) {
                    capacities.put(end.unitId(), capacity);
                }
            } catch (OutOfRange curveWasChanged) {
                // nothing can be said until the unit is tested again
            }
        }
        return capacities;
    }

    /** What each standing test of these units said, oldest first. */
    Map<Long, List<Capacity>> capacityHistories(Collection<Long> unitIds) {
        if (unitIds.isEmpty()) {
            return Map.of();
        }
        Map<Long, List<FlowTest>> newestFirst =
                tests.findByUnitIdInAndWithdrawnAtIsNullOrderByAtDescIdDesc(unitIds).stream()
                        .collect(Collectors.groupingBy(test -> test.unitId));
        Map<Long, List<Capacity>> histories = new HashMap<>();
        for (Unit unit : pumps.units(newestFirst.keySet())) {
            List<FlowTest> its = new ArrayList<>(newestFirst.getOrDefault(unit.id(), List.of()));
            Collections.reverse(its);
            FlowTestWorking working =
                    new FlowTestWorking(unit.model(), its.get(0).facts());
            List<Capacity> said = new ArrayList<>();
            for (int i = 0; i < its.size(); i++) {
                Capacity capacity = worked(
                                working, unit.model(), its.get(i).id, its.get(i).facts(), i, its.get(i))
                        .capacity();
                if (capacity != null) {
                    said.add(capacity);
                }
            }
            histories.put(unit.id(), said);
        }
        return histories;
    }

    /** The standing tests of each unit against its first, oldest first; units without any are not in it. */
    Map<Long, List<ComparedTest>> compared(Collection<Long> unitIds) {
        if (unitIds.isEmpty()) {
            return Map.of();
        }
        Map<Long, List<FlowTest>> newestFirst =
                tests.findByUnitIdInAndWithdrawnAtIsNullOrderByAtDescIdDesc(unitIds).stream()
                        .collect(Collectors.groupingBy(test -> test.unitId));
        Map<Long, List<ComparedTest>> compared = new HashMap<>();
        for (Unit unit : pumps.units(newestFirst.keySet())) {
            List<FlowTest> its = newestFirst.getOrDefault(unit.id(), List.of());
            FlowTestWorking working =
                    new FlowTestWorking(unit.model(), its.get(its.size() - 1).facts());
            List<ComparedTest> tests = new ArrayList<>();
            for (FlowTest test : its) {
                tests.add(0, working.againstFirst(test.id, test.facts()));
            }
            compared.put(unit.id(), List.copyOf(tests));
        }
        return compared;
    }

    private List<FlowTestDraft> standing(long unitId) {
        return tests.findByUnitIdOrderByAtAscIdAsc(unitId).stream()
                .filter(FlowTest::stands)
                .map(FlowTest::facts)
                .toList();
    }

    private FlowTestResult worked(
            FlowTestWorking working,
            Model model,
            @Nullable Long id,
            FlowTestDraft draft,
            int before,
            @Nullable FlowTest kept) {
        Figures figures = null;
        Capacity capacity = null;
        List<Remark> remarks = List.of();
        try {
            figures = working.figures(draft);
            Compared compared = working.compared(draft, figures);
            capacity = compared.capacity(draft.unitId(), id == null ? 0 : id, draft, before + 1);
            remarks = remarks(model, draft, figures, compared);
        } catch (OutOfRange curveWasChanged) {
            // the test stays to be read, without figures
        }
        boolean stands = kept == null || kept.stands();
        return new FlowTestResult(
                id,
                draft,
                figures,
                capacity,
                stands && before == 0,
                remarks,
                kept == null ? null : kept.recordedBy,
                kept == null ? null : kept.recordedAt,
                kept == null ? null : kept.withdrawal());
    }

    private static List<Remark> remarks(Model model, FlowTestDraft draft, Figures figures, Compared compared) {
        List<Reason> reasons = compared.reduction().verdictReasons();
        boolean filled = draft.container() != null;
        Double meter = filled ? draft.container().meterFlowM3h() : null;
        double spread = figures.spread() == null ? 0 : figures.spread();
        List<Remark> remarks = new ArrayList<>();
        note(remarks, Remark.SHORT_FILL, filled && reasons.contains(Reason.FILL_UNDER_10_S));
        note(remarks, Remark.SHORT_FALL, !filled && reasons.contains(Reason.FILL_UNDER_10_S));
        note(remarks, Remark.SPREAD_OVER_8, spread > SPREAD_TOO_WIDE);
        note(remarks, Remark.SPREAD_OVER_5, spread > SPREAD_WIDE && spread <= SPREAD_TOO_WIDE);
        note(remarks, Remark.FEW_REPEATS, filled && reasons.contains(Reason.FEWER_THAN_3_REPEATS));
        note(
                remarks,
                Remark.METER_DISAGREES,
                meter != null && Math.abs(meter / figures.flowM3h() - 1) > METER_MAY_DIFFER);
        note(remarks, Remark.MORE_THAN_REFERENCE, reasons.contains(Reason.BETTER_THAN_REFERENCE));
        note(remarks, Remark.OTHER_RIG, compared.onAnotherRig());
        note(remarks, Remark.OTHER_FREQUENCY, FlowTestWorking.atOtherFrequency(model, draft));
        note(remarks, Remark.HEAD_COMPUTED, draft.gauge() == null);
        note(remarks, Remark.FLAT_CURVE, reasons.contains(Reason.FLAT_CURVE));
        note(remarks, Remark.LOSS_WITHIN_DOUBT, reasons.contains(Reason.LOSS_WITHIN_DOUBT));
        return List.copyOf(remarks);
    }

    private static void note(List<Remark> remarks, Remark remark, boolean so) {
        if (so) {
            remarks.add(remark);
        }
    }

    private Show show(Person reader, Unit unit) {
        ZoneId zone = unit.stand().zone();
        return new Show(reader.unitSystem(), LocaleContextHolder.getLocale(), LocalDate.now(clock.withZone(zone)));
    }
}

package freshet.board;

import freshet.board.Storage.Stretch;
import freshet.happenings.HappeningKind;
import freshet.places.Window;
import freshet.places.WindowKind;
import freshet.rules.Applied;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.Measure;
import freshet.rules.Scope;
import freshet.rules.Trigger;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A unit on paper, whose days a test lets pass: it is used, stored, moved and worked on, and the engine is asked what is due. */
final class PaperUnit {

    ZoneId zone = ZoneId.of("America/Chicago");
    List<Window> windows = new ArrayList<>();
    LocalDate inCareFrom = LocalDate.of(2024, 1, 31);
    LocalDate today = inCareFrom;

    @Nullable
    Long positionId;

    @Nullable
    LocalDate positionSince;

    List<Work> works = new ArrayList<>();
    List<Work> positionWorks = new ArrayList<>();
    List<Stretch> laidUp = new ArrayList<>();
    boolean onHire;

    @Nullable
    LocalDate usedOn;

    @Nullable
    Instant provedAt;

    List<Series.Point> hours = new ArrayList<>();
    List<Series.Point> starts = new ArrayList<>();
    List<Occasion> happenings = new ArrayList<>();
    List<Occasion> moves = new ArrayList<>();
    Map<Measure, List<Figure>> figures = new EnumMap<>(Measure.class);
    private long lastTask = 999;

    /** A rule as these tests know it: sliding, opens 14 days before, always. */
    static CareRule rule(long id, String job, Trigger... triggers) {
        return new CareRule(
                id,
                "own-" + id,
                job,
                "Rule " + id,
                new Scope.Every(),
                Arrays.asList(triggers),
                1,
                false,
                false,
                14,
                0,
                null,
                null,
                false,
                Applies.ALWAYS,
                Set.of(),
                true,
                null,
                0);
    }

    static CareRule fixed(CareRule r) {
        return new CareRule(
                r.id(),
                r.code(),
                r.job(),
                r.name(),
                r.scope(),
                r.triggers(),
                1,
                true,
                r.followsPosition(),
                r.opensDaysBefore(),
                0,
                null,
                null,
                false,
                r.applies(),
                r.covers(),
                true,
                null,
                0);
    }

    static CareRule following(CareRule r) {
        return new CareRule(
                r.id(),
                r.code(),
                r.job(),
                r.name(),
                r.scope(),
                r.triggers(),
                1,
                r.fixed(),
                true,
                r.opensDaysBefore(),
                0,
                null,
                null,
                false,
                r.applies(),
                r.covers(),
                true,
                null,
                0);
    }

    static CareRule when(CareRule r, Applies applies) {
        return new CareRule(
                r.id(),
                r.code(),
                r.job(),
                r.name(),
                r.scope(),
                r.triggers(),
                1,
                r.fixed(),
                r.followsPosition(),
                r.opensDaysBefore(),
                0,
                null,
                null,
                r.oncePerSeason(),
                applies,
                r.covers(),
                true,
                null,
                0);
    }

    static CareRule covering(CareRule r, String... jobs) {
        return new CareRule(
                r.id(),
                r.code(),
                r.job(),
                r.name(),
                r.scope(),
                r.triggers(),
                1,
                r.fixed(),
                r.followsPosition(),
                r.opensDaysBefore(),
                0,
                null,
                null,
                false,
                r.applies(),
                Set.of(jobs),
                true,
                null,
                0);
    }

    static CareRule reachable(CareRule r, MonthDay from, MonthDay to) {
        return new CareRule(
                r.id(),
                r.code(),
                r.job(),
                r.name(),
                r.scope(),
                r.triggers(),
                1,
                r.fixed(),
                r.followsPosition(),
                r.opensDaysBefore(),
                0,
                from,
                to,
                r.oncePerSeason(),
                r.applies(),
                r.covers(),
                true,
                null,
                0);
    }

    static CareRule oncePerSeason(CareRule r) {
        return new CareRule(
                r.id(),
                r.code(),
                r.job(),
                r.name(),
                r.scope(),
                r.triggers(),
                1,
                r.fixed(),
                r.followsPosition(),
                r.opensDaysBefore(),
                0,
                r.accessFrom(),
                r.accessTo(),
                true,
                r.applies(),
                r.covers(),
                true,
                null,
                0);
    }

    static Window window(long id, WindowKind kind, int fromMonth, int fromDay, int toMonth, int toDay) {
        return new Window(id, 1, kind, "Window " + id, MonthDay.of(fromMonth, fromDay), MonthDay.of(toMonth, toDay));
    }

    Instant noon(LocalDate day) {
        return day.atTime(LocalTime.NOON).atZone(zone).toInstant();
    }

    UnitFacts facts() {
        Storage storage = new Storage(List.copyOf(laidUp));
        return new UnitFacts(
                inCareFrom,
                new SiteDays(zone, today, windows),
                positionId,
                positionSince,
                works,
                positionWorks,
                storage,
                onHire,
                usedOn,
                provedAt,
                new Series(List.copyOf(hours)),
                new Series(List.copyOf(starts)),
                happenings,
                moves,
                figures);
    }

    Engine.Plan plan(CareRule... rules) {
        return new Engine(facts())
                .plan(Arrays.stream(rules)
                        .map(rule -> new Applied(rule, List.of()))
                        .toList());
    }

    /** What is wanted, the earliest due first. */
    List<Wanted> wanted(CareRule... rules) {
        return plan(rules).wanted().stream()
                .sorted(Comparator.comparing(wanted -> wanted.days().dueOn()))
                .toList();
    }

    /** "2026-03-01 2026-03-15 after:start" of each. */
    List<String> lines(CareRule... rules) {
        return wanted(rules).stream()
                .map(wanted -> wanted.days().opensOn() + " " + wanted.days().dueOn() + " " + wanted.occurrence())
                .toList();
    }

    /** Signs a task today. */
    Work sign(Wanted wanted) {
        return sign(wanted, today);
    }

    Work sign(Wanted wanted, LocalDate day) {
        Work work = new Work(
                ++lastTask,
                wanted.rule().id(),
                wanted.occurrence(),
                wanted.rule().job(),
                wanted.rule().covers(),
                wanted.days().opensOn(),
                wanted.days().dueOn(),
                noon(day),
                day,
                1);
        works.add(work);
        positionWorks.add(work);
        return work;
    }

    /** The pump that takes its place: new to us, with nothing of its own. */
    PaperUnit replacement() {
        PaperUnit next = new PaperUnit();
        next.zone = zone;
        next.inCareFrom = inCareFrom;
        next.today = today;
        next.positionId = positionId;
        next.positionSince = positionSince;
        next.positionWorks = positionWorks;
        next.lastTask = lastTask;
        return next;
    }

    void happened(long id, HappeningKind kind, LocalDate day) {
        happenings.add(new Occasion(id, kind, noon(day), day));
    }

    void read(List<Series.Point> meter, LocalDate day, double total) {
        meter.add(new Series.Point(noon(day), day, total));
    }

    void layUp(LocalDate day) {
        laidUp.add(new Stretch(noon(day), day, null, null));
    }

    void bringOut(LocalDate day) {
        Stretch last = laidUp.remove(laidUp.size() - 1);
        laidUp.add(new Stretch(last.from(), last.fromDay(), noon(day), day));
    }
}

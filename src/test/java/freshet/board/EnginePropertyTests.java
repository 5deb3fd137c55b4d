package freshet.board;

import static freshet.board.PaperUnit.covering;
import static freshet.board.PaperUnit.fixed;
import static freshet.board.PaperUnit.following;
import static freshet.board.PaperUnit.oncePerSeason;
import static freshet.board.PaperUnit.reachable;
import static freshet.board.PaperUnit.rule;
import static freshet.board.PaperUnit.when;
import static freshet.board.PaperUnit.window;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.happenings.HappeningKind;
import freshet.places.WindowKind;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.Period;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Thirty years of random units on paper, from seeds that a failure names, against slow oracles. */
class EnginePropertyTests {

    private static final int YEARS = 30;
    private static final List<ZoneId> ZONES = List.of(
            ZoneId.of("America/Chicago"),
            ZoneId.of("Pacific/Kiritimati"),
            ZoneId.of("Australia/Lord_Howe"),
            ZoneId.of("America/Havana"));

    private static PaperUnit unit(Random random) {
        PaperUnit unit = new PaperUnit();
        unit.zone = ZONES.get(random.nextInt(ZONES.size()));
        LocalDate day = LocalDate.of(2023, 12, 15).plusDays(random.nextInt(90));
        LocalDate[] ends = {LocalDate.of(2024, 1, 31), LocalDate.of(2024, 2, 29), LocalDate.of(2024, 3, 31), day};
        unit.inCareFrom = ends[random.nextInt(4)];
        unit.today = unit.inCareFrom;
        return unit;
    }

    private static Period period(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> Period.ofDays(16 + random.nextInt(40));
            case 1 -> Period.ofWeeks(3 + random.nextInt(8));
            case 2 -> Period.ofMonths(1 + random.nextInt(18));
            default -> Period.ofYears(1 + random.nextInt(3));
        };
    }

    /** By the calendar on the wall: so many months on, the same day or the month's last. */
    private static LocalDate after(LocalDate anchor, Period every, int k) {
        if (every.getDays() > 0) {
            return LocalDate.ofEpochDay(anchor.toEpochDay() + (long) every.getDays() * k);
        }
        YearMonth month = YearMonth.from(anchor).plusMonths(every.toTotalMonths() * k);
        return month.atDay(Math.min(anchor.getDayOfMonth(), month.lengthOfMonth()));
    }

    @Test
    void neverDriftsNeverSkipsAndNeverAsksTwiceForAFixedInterval() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            Period every = period(random);
            CareRule law = fixed(rule(1, "law", new Trigger.Calendar(every)));
            LocalDate end = unit.inCareFrom.plusYears(YEARS);
            Map<Integer, LocalDate> seen = new TreeMap<>();
            Set<Integer> signed = new HashSet<>();
            int pace = 4 + random.nextInt(12);
            while (unit.today.isBefore(end)) {
                List<Wanted> wanted = unit.wanted(law);
                assertThat(wanted.size()).as("seed %d", seed).isBetween(1, 2);
                for (Wanted each : wanted) {
                    int k = Integer.parseInt(each.occurrence().split(":")[1]);
                    seen.put(k, each.days().dueOn());
                    assertThat(signed)
                            .as("seed %d, signed and asked again", seed)
                            .doesNotContain(k);
                }
                Wanted first = wanted.get(0);
                if (!first.days().opensOn().isAfter(unit.today) && random.nextInt(4) > 0) {
                    unit.sign(first);
                    signed.add(Integer.parseInt(first.occurrence().split(":")[1]));
                }
                unit.today = unit.today.plusDays(1 + random.nextInt(pace));
            }
            int last = Collections.max(seen.keySet());
            for (int k = 1; k <= last; k++) {
                assertThat(seen.get(k)).as("seed %d, k %d", seed, k).isEqualTo(after(unit.inCareFrom, every, k));
            }
            assertThat(after(unit.inCareFrom, every, last)).as("seed %d", seed).isAfterOrEqualTo(end.minusDays(16));
        }
    }

    @Test
    void countsASlidingIntervalFromEachSignatureOneTaskAtATime() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            Period every = period(random);
            CareRule wear = rule(1, "wear", new Trigger.Calendar(every));
            LocalDate from = unit.inCareFrom;
            LocalDate end = unit.inCareFrom.plusYears(YEARS);
            Set<String> signed = new HashSet<>();
            while (unit.today.isBefore(end)) {
                List<Wanted> wanted = unit.wanted(wear);
                assertThat(wanted).as("seed %d on %s", seed, unit.today).hasSize(1);
                Wanted task = wanted.get(0);
                assertThat(task.days().dueOn()).as("seed %d", seed).isEqualTo(after(from, every, 1));
                assertThat(signed.contains(task.occurrence())).isFalse();
                assertThat(task.days().opensOn())
                        .isAfter(from)
                        .isBeforeOrEqualTo(task.days().dueOn());
                if (!task.days().opensOn().isAfter(unit.today) && random.nextInt(3) == 0) {
                    unit.sign(task);
                    signed.add(task.occurrence());
                    from = unit.today;
                }
                unit.today = unit.today.plusDays(1 + random.nextInt(12));
            }
        }
    }

    @Test
    void plansTheTurnsThatTheCalendarSays() {
        for (int seed = 0; seed < 400; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            // none, one or two a year, wrapping the year's end or not, anywhere on the globe
            int parts = random.nextInt(3);
            for (int part = 0; part < parts; part++) {
                LocalDate from = LocalDate.of(2028, 1, 1).plusDays(random.nextInt(40) + 183L * part);
                LocalDate to = from.plusDays(random.nextInt(140));
                unit.windows.add(window(
                        10 + part,
                        WindowKind.OPENING,
                        from.getMonthValue(),
                        from.getDayOfMonth(),
                        to.getMonthValue(),
                        to.getDayOfMonth()));
            }
            CareRule opening = rule(1, "opening", new Trigger.Season(WindowKind.OPENING));
            unit.today = unit.inCareFrom.plusDays(random.nextInt(365 * YEARS));
            List<String> expected = new ArrayList<>();
            unit.windows.forEach(window -> {
                boolean last = true;
                for (LocalDate day = unit.today.plusDays(366); last; day = day.minusDays(1)) {
                    if (is(window.from(), day)) {
                        LocalDate due = day;
                        while (!is(window.to(), due)) {
                            due = due.plusDays(1);
                        }
                        last = day.isAfter(unit.today);
                        if (!due.isBefore(unit.inCareFrom)) {
                            expected.add(day + " " + due + " " + window.id() + ":" + day.getYear());
                        }
                    }
                }
            });
            assertThat(unit.lines(opening)).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(expected);
        }
    }

    private static boolean is(MonthDay wanted, LocalDate day) {
        boolean leapDay = wanted.equals(MonthDay.of(2, 29)) && !day.isLeapYear();
        return MonthDay.from(day).equals(leapDay ? MonthDay.of(2, 28) : wanted);
    }

    @Test
    void asksOnceForAnyNumberOfStormsAndAgainForEachAfterTheCheck() {
        for (int seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            CareRule look = rule(1, "look", new Trigger.Event(HappeningKind.STORM, false, random.nextInt(5)));
            LocalDate checked = LocalDate.MIN;
            List<LocalDate> storms = new ArrayList<>();
            for (int day = 0; day < 365 * 5; day++) {
                unit.today = unit.today.plusDays(1);
                if (random.nextInt(60) == 0) {
                    storms.add(unit.today);
                    unit.happened(day, HappeningKind.STORM, unit.today);
                }
                LocalDate since = checked;
                LocalDate first = storms.stream()
                        .filter(storm -> storm.isAfter(since) && !storm.isBefore(unit.today.minusDays(366)))
                        .findFirst()
                        .orElse(null);
                List<Wanted> wanted = unit.wanted(look);
                if (first == null) {
                    assertThat(wanted).as("seed %d", seed).isEmpty();
                } else {
                    assertThat(wanted)
                            .as("seed %d", seed)
                            .singleElement()
                            .satisfies(one -> assertThat(one.days().opensOn()).isEqualTo(first));
                    if (random.nextInt(30) == 0) {
                        unit.sign(wanted.get(0));
                        checked = unit.today;
                    }
                }
            }
        }
    }

    @Test
    void asksAtTheReadingThatReachesTheHoursAndForetellsSteadyUseToTheDay() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            int limit = 50 + random.nextInt(300);
            CareRule oil = rule(1, "oil", new Trigger.RunHours(BigDecimal.valueOf(limit), null));
            double perDay = 0.5 + random.nextInt(80) / 10.0;
            double done = 0;
            double total = 0;
            boolean steady = random.nextBoolean();
            unit.read(unit.hours, unit.today, 0);
            for (int visit = 0; visit < 120; visit++) {
                int days = 1 + random.nextInt(20);
                total += steady ? perDay * days : random.nextInt(24 * days);
                unit.today = unit.today.plusDays(days);
                unit.read(unit.hours, unit.today, total);
                List<Wanted> wanted = unit.wanted(oil);
                if (total - done >= limit) {
                    double from = done;
                    LocalDate reached = unit.hours.stream()
                            .filter(point -> point.total() >= from + limit)
                            .findFirst()
                            .orElseThrow()
                            .day();
                    assertThat(wanted).as("seed %d", seed).hasSize(1);
                    assertThat(wanted.get(0).days().dueOn()).isEqualTo(reached);
                    assertThat(wanted.get(0).days().predicted()).isFalse();
                    if (random.nextInt(3) == 0) {
                        unit.sign(wanted.get(0));
                        done = total;
                    }
                } else if (!wanted.isEmpty()) {
                    Wanted foretold = wanted.get(0);
                    assertThat(foretold.days().predicted()).as("seed %d", seed).isTrue();
                    assertThat(foretold.days().dueOn()).isAfterOrEqualTo(unit.today);
                    if (steady) {
                        long exact = (long) Math.ceil((limit - (total - done)) / perDay - 1e-6);
                        assertThat(ChronoUnit.DAYS.between(
                                        unit.today, foretold.days().dueOn()))
                                .as("seed %d", seed)
                                .isBetween(exact - 1, exact + 1); // a day of 23 or 25 hours
                    }
                } else {
                    assertThat(steady && limit / perDay < 360)
                            .as("seed %d", seed)
                            .isFalse();
                }
            }
        }
    }

    @Test
    void neverAsksForSmallWorkThatLargeWorkContainedInItsWindow() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            Period every = Period.ofMonths(2 + random.nextInt(12));
            CareRule small = rule(1, "small", new Trigger.Calendar(every));
            CareRule large = covering(rule(2, "large", new Trigger.Calendar(every.multipliedBy(3))), "small");
            LocalDate base = unit.inCareFrom;
            for (int step = 0; step < 80; step++) {
                unit.today = unit.today.plusDays(1 + random.nextInt(40));
                LocalDate due = after(base, every, 1);
                LocalDate opens = due.minusDays(14).isAfter(base) ? due.minusDays(14) : base.plusDays(1);
                Wanted task = unit.wanted(small).get(0);
                assertThat(task.days().dueOn()).as("seed %d", seed).isEqualTo(due);
                assertThat(task.days().opensOn()).as("seed %d", seed).isEqualTo(opens);
                int what = random.nextInt(3);
                if (what == 0) {
                    unit.sign(unit.wanted(large).get(0));
                    base = unit.today.isBefore(opens) ? base : unit.today;
                } else if (what == 1 && !unit.today.isBefore(opens)) {
                    unit.sign(task);
                    base = unit.today;
                }
            }
        }
    }

    @Test
    void keepsThePositionsScheduleWhicheverPumpStandsThere() {
        for (int seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            CareRule pit = following(rule(1, "pit", new Trigger.Calendar(period(random))));
            CareRule law = fixed(following(rule(2, "law", new Trigger.Calendar(period(random)))));
            PaperUnit one = unit(random);
            one.positionId = 5L;
            one.positionSince = one.inCareFrom;
            PaperUnit now = one;
            for (int step = 0; step < 60; step++) {
                now.today = now.today.plusDays(random.nextInt(60));
                List<Wanted> wanted = now.wanted(pit, law);
                if (random.nextInt(4) == 0) {
                    now = now.replacement();
                    assertThat(now.lines(pit, law))
                            .as("seed %d", seed)
                            .containsExactlyInAnyOrderElementsOf(wanted.stream()
                                    .map(each -> each.days().opensOn() + " "
                                            + each.days().dueOn() + " " + each.occurrence())
                                    .toList());
                }
                for (Wanted each : now.wanted(pit, law)) {
                    if (!each.days().opensOn().isAfter(now.today) && random.nextBoolean()) {
                        now.sign(each);
                        break;
                    }
                }
            }
        }
    }

    /** Rules of all kinds at once through storage, hire and storms: nothing twice, nothing before its time, in any order the same. */
    @Test
    void mindsNoOrderAndAsksNothingTwiceWhateverHappens() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            PaperUnit unit = unit(random);
            unit.windows.add(window(7, WindowKind.OPENING, 12, 20, 2, 10));
            unit.windows.add(window(8, WindowKind.CLOSING, 6, 1, 7, 10));
            unit.read(unit.hours, unit.today, 0);
            CareRule[] rules = rules(random);
            boolean laidUp = false;
            double total = 0;
            for (int step = 0; step < 120; step++) {
                unit.today = unit.today.plusDays(random.nextInt(45));
                switch (random.nextInt(5)) {
                    case 0 -> unit.happened(step, HappeningKind.STORM, unit.today);
                    case 1 -> {
                        total += laidUp ? 0 : random.nextInt(60);
                        unit.read(unit.hours, unit.today, total);
                        unit.usedOn = unit.facts().hours().lastRise();
                    }
                    case 2 -> {
                        if (laidUp) {
                            unit.bringOut(unit.today);
                            unit.provedAt = unit.noon(unit.today);
                        } else {
                            unit.layUp(unit.today);
                        }
                        laidUp = !laidUp;
                    }
                    case 3 -> unit.onHire = random.nextBoolean();
                    default -> signSome(unit, rules, random);
                }
                List<String> lines = unit.lines(rules);
                check(unit, rules, laidUp, seed);
                Collections.shuffle(unit.works, random);
                Collections.shuffle(Arrays.asList(rules), random);
                assertThat(unit.lines(rules)).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(lines);
            }
        }
    }

    private static CareRule[] rules(Random random) {
        Trigger calendar = new Trigger.Calendar(period(random));
        Trigger hours = new Trigger.RunHours(BigDecimal.valueOf(20 + random.nextInt(200)), BigDecimal.TEN);
        Trigger storm = new Trigger.Event(HappeningKind.STORM, random.nextBoolean(), random.nextInt(9));
        return new CareRule[] {
            rule(1, "opening", new Trigger.Season(WindowKind.OPENING)),
            rule(2, "closing", new Trigger.Season(WindowKind.CLOSING), storm),
            fixed(rule(3, "law", calendar, hours)),
            when(oncePerSeason(rule(4, "oil", hours, calendar, storm)), Applies.IN_USE),
            when(rule(5, "turn", new Trigger.Calendar(Period.ofMonths(1))), Applies.LAID_UP),
            rule(6, "exercise", new Trigger.Idle(20 + random.nextInt(60), 7)),
            reachable(rule(7, "pit", calendar, storm), MonthDay.of(11, 1), MonthDay.of(3, 15)),
            covering(rule(8, "large", new Trigger.Calendar(Period.ofYears(2))), "oil", "law", "pit")
        };
    }

    private static void signSome(PaperUnit unit, CareRule[] rules, Random random) {
        for (Wanted each : unit.wanted(rules)) {
            if (!each.days().opensOn().isAfter(unit.today) && random.nextInt(3) == 0) {
                unit.sign(each);
                return;
            }
        }
    }

    private static void check(PaperUnit unit, CareRule[] rules, boolean laidUp, int seed) {
        Set<String> keys = new HashSet<>();
        Map<Long, Integer> others = new TreeMap<>();
        Set<String> signed = new HashSet<>();
        unit.works.forEach(work -> signed.add(work.ruleId() + " " + work.occurrence()));
        for (Wanted each : unit.wanted(rules)) {
            String key = each.rule().id() + " " + each.occurrence();
            String words = "seed %d, %s on %s".formatted(seed, key, unit.today);
            assertThat(keys.add(key)).as(words).isTrue();
            assertThat(signed.contains(key)).as(words).isFalse();
            assertThat(each.days().opensOn())
                    .as(words)
                    .isBeforeOrEqualTo(each.days().dueOn());
            assertThat(each.days().dueOn()).as(words).isAfterOrEqualTo(unit.inCareFrom);
            if (!Wanted.standsForItself(each.occurrence())) {
                assertThat(others.merge(each.rule().id(), 1, Integer::sum))
                        .as(words)
                        .isOne();
            }
            if (each.rule().accessFrom() != null) {
                LocalDate due = each.days().dueOn();
                assertThat(due.getMonthValue() >= 11 || !MonthDay.from(due).isAfter(MonthDay.of(3, 15)))
                        .as(words)
                        .isTrue();
            }
            if (laidUp) {
                assertThat(each.rule().applies()).as(words).isNotEqualTo(Applies.IN_USE);
                assertThat(each.days().why().name())
                        .as(words)
                        .doesNotStartWith("hours")
                        .isNotEqualTo("idle");
            } else {
                assertThat(each.rule().applies()).as(words).isNotEqualTo(Applies.LAID_UP);
            }
        }
        // the law is never silent: its next day is always on the board
        assertThat(keys).as("seed %d", seed).anyMatch(key -> key.startsWith("3 k:"));
    }
}

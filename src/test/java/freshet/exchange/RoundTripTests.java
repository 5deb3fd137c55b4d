package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.TestDatabase;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.CustomerDraft;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.SiteDraft;
import freshet.places.WindowDraft;
import freshet.places.WindowKind;
import freshet.pumps.CurveForm;
import freshet.pumps.CurvePoint;
import freshet.pumps.Drive;
import freshet.pumps.Duty;
import freshet.pumps.KitItem;
import freshet.pumps.KitKind;
import freshet.pumps.ModelDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;

/** A register drawn at random goes out in files, changes nothing where it came from, and makes the same register in an empty install. */
@FreshetTest
class RoundTripTests {

    private static final Instant NOW = Instant.parse("2026-11-20T18:00:00Z");
    private static final List<ZoneId> ZONES = Stream.of(
                    "America/Chicago", "Pacific/Auckland", "Asia/Kolkata", "Europe/Dublin", "Pacific/Apia")
            .map(ZoneId::of)
            .toList();
    private static final List<String> TRICKY = List.of(
            "plain",
            "a, b; c",
            "said \"so\"",
            "two\nlines",
            "two\r\nlines",
            "=1+1",
            "'=1",
            "''-x",
            "-3",
            "@home",
            "+49 1",
            "\u00c5ngstr\u00f6m",
            "<b>bold</b>",
            "null",
            "yes",
            "0012",
            "3/4",
            "\ud83d\udca7",
            "it's",
            "tab \t inside");

    @Autowired
    Exchange exchange;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    @Autowired
    DataSource dataSource;

    private Random random;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void goesOutAndComesInUnchanged(long seed) {
        random = new Random(seed);
        Person me = newInstall();
        drawRegister(me);
        List<NamedFile> us = files(me);

        assertThat(exchange.preview(us, me)).satisfies(RoundTripTests::isNothingNew);

        TestDatabase.clean(dataSource);
        Person other = newInstall();
        Preview taken = exchange.takeIn(us, other);
        assertThat(taken.changed() + taken.same()).isZero();
        List<NamedFile> again = files(other);
        for (int at = 0; at < us.size(); at++) {
            assertThat(text(again.get(at))).isEqualTo(text(us.get(at)));
        }

        people.readIn(other.id(), UnitSystem.SI);
        Person inSi = people.person(other.id());
        assertThat(exchange.preview(files(inSi), inSi)).satisfies(RoundTripTests::isNothingNew);
    }

    private static void isNothingNew(Preview preview) {
        assertThat(preview.problems()).isEmpty();
        assertThat(preview.changes()).isEmpty();
        assertThat(preview.nothingToDo()).isTrue();
        assertThat(preview.same()).isPositive();
    }

    private static String text(NamedFile file) {
        return new String(file.content(), StandardCharsets.UTF_8);
    }

    private Person newInstall() {
        clock.set(NOW);
        return people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
    }

    private List<NamedFile> files(Person reader) {
        return Stream.of(FileKind.values())
                .map(kind -> new NamedFile(kind.word() + ".csv", exchange.export(kind, reader)))
                .toList();
    }

    private int upTo(int most) {
        return random.nextInt(most + 1);
    }

    private <T> T oneOf(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    private <E extends Enum<E>> E oneOf(Class<E> all) {
        return oneOf(List.of(all.getEnumConstants()));
    }

    private @Nullable String note() {
        return random.nextBoolean() ? null : oneOf(TRICKY) + upTo(9);
    }

    /** Either as people type it, or with all the digits that a double has. */
    private double between(double low, double high) {
        double value = low + random.nextDouble() * (high - low);
        return random.nextBoolean() ? value : Math.max(low, Math.round(value * 10) / 10.0);
    }

    private @Nullable Double perhaps(double low, double high) {
        return random.nextBoolean() ? null : Double.valueOf(between(low, high));
    }

    private void drawRegister(Person me) {
        List<Long> customers = IntStream.rangeClosed(1, 3)
                .mapToObj(n -> places.addCustomer(new CustomerDraft(oneOf(TRICKY) + " " + n, note(), note()), me)
                        .id())
                .toList();
        List<Long> sites = IntStream.rangeClosed(1, 4)
                .mapToObj(n -> places.addSite(
                                new SiteDraft(
                                        oneOf(TRICKY) + " site " + n,
                                        oneOf(ZONES),
                                        note(),
                                        random.nextBoolean() ? null : oneOf(customers),
                                        windows()),
                                me)
                        .id())
                .toList();
        List<long[]> positions = new ArrayList<>();
        for (long site : sites) {
            for (int n = upTo(2); n > 0; n--) {
                long id = places.addPosition(
                                new PositionDraft(site, oneOf(TRICKY) + n, oneOf(PositionKind.class), note()), me)
                        .id();
                positions.add(new long[] {site, id});
            }
        }
        List<Long> models = IntStream.rangeClosed(1, 4)
                .mapToObj(n -> pumps.addModel(model(n), me).id())
                .toList();
        for (int n = 1; n <= 8; n++) {
            Long position = null;
            long site = oneOf(sites);
            if (!positions.isEmpty() && random.nextBoolean()) {
                long[] at = oneOf(positions);
                site = at[0];
                position = at[1];
            }
            Unit unit = pumps.register(
                    new UnitDraft(
                            "T-" + n,
                            note(),
                            oneOf(models),
                            random.nextBoolean() ? null : oneOf(customers),
                            LocalDate.of(2020 + upTo(4), 1 + upTo(11), 1 + upTo(27)),
                            note()),
                    new Whereabouts(site, position, note()),
                    me);
            pumps.changeKit(unit.id(), unit.version(), kit(), me);
            meters(unit.id(), me);
        }
    }

    /** Windows one after the other round the year, from a day that may lie anywhere, so that the last may wrap. */
    private List<WindowDraft> windows() {
        List<WindowDraft> windows = new ArrayList<>();
        LocalDate day = LocalDate.of(2024, 1, 1).plusDays(upTo(365));
        for (int n = upTo(4); n > 0; n--) {
            LocalDate to = day.plusDays(1 + upTo(60));
            windows.add(new WindowDraft(
                    null, oneOf(WindowKind.class), oneOf(TRICKY) + n, MonthDay.from(day), MonthDay.from(to)));
            day = to.plusDays(2 + upTo(20));
        }
        return windows;
    }

    private ModelDraft model(int n) {
        List<CurvePoint> points = new ArrayList<>();
        boolean two = random.nextBoolean();
        if (two) {
            points.add(new CurvePoint(0, between(2, 50)));
            points.add(new CurvePoint(between(1, 60), 0));
        } else {
            double flow = 0;
            double head = between(20, 60);
            for (int count = 2 + upTo(10); count > 0; count--) {
                points.add(new CurvePoint(flow, head));
                flow += between(0.2, 5);
                head -= between(0.2, 1.5);
            }
        }
        Duty duty = random.nextBoolean() ? null : oneOf(Duty.class);
        return new ModelDraft(
                oneOf(TRICKY) + " model " + n,
                oneOf(PumpKind.class),
                oneOf(Drive.class),
                random.nextBoolean(),
                new Ratings(
                        perhaps(1, 1000),
                        perhaps(1, 400),
                        perhaps(0.5, 200),
                        null,
                        duty,
                        duty == null || duty == Duty.S1 ? null : Double.valueOf(between(1, 100)),
                        perhaps(0.5, 60),
                        perhaps(0.5, 240),
                        perhaps(10, 300),
                        perhaps(10, 300),
                        perhaps(0, 100),
                        perhaps(0, 150)),
                two ? CurveForm.TWO_PARAMETER : CurveForm.TABLE,
                points,
                random.nextDouble() / 2,
                note(),
                note());
    }

    private List<KitItem> kit() {
        return IntStream.range(0, upTo(4))
                .mapToObj(n -> new KitItem(
                        oneOf(KitKind.class),
                        oneOf(TRICKY) + n,
                        perhaps(10, 300),
                        perhaps(10, 300),
                        perhaps(0.5, 600),
                        1 + upTo(8)))
                .toList();
    }

    /** Readings, swaps and rollovers, some in the hours that a clock shows twice. */
    private void meters(long unit, Person me) {
        for (MeterKind kind : MeterKind.values()) {
            Instant at = Instant.parse("2026-10-30T00:30:00Z").plusSeconds(upTo(400));
            BigDecimal value = BigDecimal.valueOf(upTo(5000));
            BigDecimal rollsOverAt = random.nextBoolean() ? null : new BigDecimal("9999");
            switch (upTo(2)) {
                case 0 -> readings.fitMeter(unit, kind, at, value, rollsOverAt, note(), me);
                case 1 ->
                    readings.recordReading(new ReadingDraft(unit, kind, at, value, false, rollsOverAt, note()), me);
                default -> {
                    continue;
                }
            }
            for (int n = upTo(12); n > 0; n--) {
                at = at.plus(Duration.ofMinutes(60 + upTo(900)));
                BigDecimal next = value.add(BigDecimal.valueOf(upTo(1)));
                int what = upTo(9);
                if (what == 0) {
                    value = BigDecimal.valueOf(upTo(100));
                    readings.swapMeter(unit, kind, at, next, value, rollsOverAt, note(), me);
                } else if (what == 1 && rollsOverAt != null && value.compareTo(rollsOverAt) == 0) {
                    value = BigDecimal.ONE;
                    readings.recordReading(new ReadingDraft(unit, kind, at, value, true, null, note()), me);
                } else {
                    value = next;
                    readings.recordReading(new ReadingDraft(unit, kind, at, value, false, null, note()), me);
                }
            }
        }
    }
}

package freshet.example;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Board;
import freshet.care.Care;
import freshet.exchange.Exchange;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.findings.Hold;
import freshet.fleet.Fleet;
import freshet.fleet.FleetQuery;
import freshet.fleet.Word;
import freshet.hands.Hand;
import freshet.hands.Hands;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.hire.Hires;
import freshet.people.People;
import freshet.photos.Photos;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import freshet.repairs.Repair;
import freshet.repairs.Repairs;
import freshet.rounds.Round;
import freshet.rounds.Rounds;
import freshet.rules.CareRule;
import freshet.rules.CareRules;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;

/** The example yard can be set up on any day of the year, and its stories are in it. */
@FreshetTest
class ExampleYardTests {

    @Autowired
    People people;

    @Autowired
    Pumps pumps;

    @Autowired
    Readings readings;

    @Autowired
    Findings findings;

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    Photos photos;

    @Autowired
    Fleet fleet;

    @Autowired
    Exchange exchange;

    @Autowired
    Hires hires;

    @Autowired
    Happenings happenings;

    @Autowired
    Places places;

    @Autowired
    CareRules rules;

    @Autowired
    Rounds rounds;

    @Autowired
    Hands hands;

    @Autowired
    Repairs repairs;

    @Autowired
    TestClock clock;

    Example example() {
        return new Example(
                people,
                pumps,
                readings,
                findings,
                board,
                care,
                photos,
                exchange,
                hires,
                happenings,
                repairs,
                places,
                rules,
                rounds,
                hands,
                clock);
    }

    /** The whole yard takes seconds to set up, so each day is looked at once and wholly. */
    @ParameterizedTest
    @ValueSource(strings = {"2026-11-25T12:00:00Z", "2028-02-29T23:40:00Z"})
    void isAliveOnAnyDayOfTheYear(String now) {
        clock.set(now);
        assertThat(example().setUp()).isTrue();
        assertThat(example().setUp()).as("set up again").isFalse();

        assertThat(fleet.find(FleetQuery.all()).total()).isEqualTo(66);
        assertThat(fleet.tally().get(Word.NOT_READY)).isEqualTo(5);
        assertThat(fleet.tally().get(Word.READY)).isPositive();
        assertThat(fleet.tally().get(Word.UNKNOWN)).isPositive();
        assertThat(rounds.rounds(LocalDate.EPOCH)).extracting(Round::name).contains("Spring round, Osterby");
        assertThat(hands.hands().stream().mapToInt(Hand::minutesAWeek).sum()).isEqualTo(2040);
        long worn = pumps.unitTagged("BF-07").orElseThrow().id();
        assertThat(photos.on("unit:" + worn)).hasSize(1);
        assertThat(care.recordsOf(worn).get(0).photos()).hasSize(2);
        assertThat(people.byToken("example-yard-token")).isPresent();

        assertThat(findings.openHolds()).extracting(Hold::tag).contains("BF-03");
        assertThat(repairs.openRepairs()).extracting(Repair::tag).containsExactly("BF-14");
        assertThat(repairs.putOff()).extracting(Finding::tag).containsExactly("OS-05");
        assertThat(hires.count()).isEqualTo(new Hires.Count(3, 1, 1));
        assertThat(happenings.count(HappeningKind.STORM, true)).isEqualTo(9);
        assertThat(rules.active())
                .filteredOn(rule -> rule.code().startsWith("own-"))
                .extracting(CareRule::job)
                .containsExactly("monthly", "engine-oil");
        assertThat(fraction("BF-07")).isBetween(0.80, 0.87);
        assertThat(fraction("BF-01")).isBetween(0.95, 1.03);
        long swapped = pumps.unitTagged("BF-19").orElseThrow().id();
        assertThat(readings.log(swapped, MeterKind.RUN_HOURS).lifetime()).isEqualByComparingTo(new BigDecimal("412.6"));
    }

    private double fraction(String tag) {
        return readings.capacity(pumps.unitTagged(tag).orElseThrow().id())
                .orElseThrow()
                .fraction();
    }
}

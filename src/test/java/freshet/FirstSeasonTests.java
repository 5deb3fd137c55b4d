package freshet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.Pages.Page;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.fleet.Fleet;
import freshet.people.Person;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;

/** The main job, walked through HTTP without script: a fleet in, due work and remaining capacity out. */
@FreshetTest
class FirstSeasonTests {

    private static final Path EXAMPLE = Path.of("src/main/resources/example");

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    Pumps pumps;

    @Autowired
    Care care;

    @Autowired
    Readings readings;

    @Autowired
    Fleet fleet;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    @Test
    void bringsAFleetInAndWorkAndCapacityOut() {
        clock.set("2027-03-14T15:00:00Z");
        yard.ilse();
        Person teo = yard.teo();
        Pages ilse = Pages.signedIn(mvc, "ilse", "river at thaw");

        ilse.upload("/import", files());
        Page preview = ilse.open("/import/preview");
        assertThat(ilse.submit("/import/preview", "agreed", preview.value("agreed"))
                        .location())
                .isEqualTo("/import");
        plansEveryUtilityPumpOfTheYard();

        Pages technician = Pages.signedIn(mvc, "teo", "mud on boots");
        Unit unit = pumps.unitTagged("BF-04").orElseThrow();
        long recordId = signsTheOpening(technician, teo, unit);
        staysAsSigned(recordId);
        findsThePumpWeak(technician, unit);

        assertThat(ilse.open("/").text()).contains("overdue", "Brackenfold Pump Yard");
        assertThat(ilse.open("/pumps?text=BF-04").text("#found")).contains("BF-04", "±");
    }

    private static MockMultipartFile[] files() {
        return Stream.of("customers", "sites", "positions", "models", "units", "kit", "readings")
                .map(kind -> {
                    try {
                        byte[] content = Files.readAllBytes(EXAMPLE.resolve(kind + ".csv"));
                        return new MockMultipartFile("files", kind + ".csv", "text/csv", content);
                    } catch (IOException unreadable) {
                        throw new IllegalStateException(unreadable);
                    }
                })
                .toArray(MockMultipartFile[]::new);
    }

    /** The yard opens from 15 February to 20 March and closes from 1 October to 15 November. */
    private void plansEveryUtilityPumpOfTheYard() {
        List<Unit> units = pumps.units(pumps.activeUnitIds()).stream()
                .filter(unit -> unit.stand().siteName().equals("Brackenfold Pump Yard"))
                .filter(unit -> unit.model().kind() == PumpKind.UTILITY_SUBMERSIBLE)
                .toList();
        assertThat(units)
                .hasSize(16)
                .allSatisfy(unit -> assertThat(care.tasksOf(unit.id()))
                        .anySatisfy(task -> {
                            assertThat(task.title()).isEqualTo("Opening 2027");
                            assertThat(task.opensOn()).isEqualTo(LocalDate.of(2027, 2, 15));
                            assertThat(task.dueOn()).isEqualTo(LocalDate.of(2027, 3, 20));
                        })
                        .anySatisfy(task -> {
                            assertThat(task.title()).isEqualTo("Closing 2027");
                            assertThat(task.opensOn()).isEqualTo(LocalDate.of(2027, 10, 1));
                            assertThat(task.dueOn()).isEqualTo(LocalDate.of(2027, 11, 15));
                        }));
    }

    private long signsTheOpening(Pages technician, Person teo, Unit unit) {
        Task opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.title().equals("Opening 2027"))
                .findFirst()
                .orElseThrow();
        Worksheet sheet = care.worksheet(opening.id());
        String address = "/tasks/" + opening.id();
        Page unsigned = technician.submit(address, "version", "" + opening.version(), "press", "sign");
        assertThat(unsigned.status()).isEqualTo(422);
        assertThat(unsigned.text(".wrongs")).contains("to put right");

        List<String> form = new ArrayList<>(List.of("version", "" + opening.version(), "press", "sign"));
        for (Answer answer : CareYard.allPass(sheet, teo)) {
            form.add("line[c" + answer.lineId() + "].answer");
            form.add(String.valueOf(answer.answer()));
        }
        Page signed = technician.submit(address, form.toArray(String[]::new));
        assertThat(signed.location()).startsWith("/records/");
        assertThat(technician.open(signed.location()).text()).contains("Opening 2027", "BF-04", "Signed by Teo Brandt");
        assertThat(technician.open("/season").text()).contains("1 done");
        return Long.parseLong(signed.location().replace("/records/", ""));
    }

    private void staysAsSigned(long recordId) {
        assertThatThrownBy(() -> jdbc.sql("update service_record set note = 'other' where id = ?")
                        .param(recordId)
                        .update())
                .hasMessageContaining("never changed");
        assertThatThrownBy(() -> jdbc.sql("delete from record_line where record_id = ?")
                        .param(recordId)
                        .update())
                .hasMessageContaining("never changed");
        assertThat(care.chainHolds(care.record(recordId).unitId())).isTrue();
    }

    private void findsThePumpWeak(Pages technician, Unit unit) {
        String[] drum = {
            "container",
            "20 gal",
            "lap1",
            "55.2",
            "lap2",
            "56.0",
            "lap3",
            "55.4",
            "lift",
            "8 ft",
            "pumpOutlet",
            "1.25 in",
            "pieces[0].kind",
            "HOSE",
            "pieces[0].hose",
            "SMOOTH_HOSE",
            "pieces[0].bore",
            "1.5 in",
            "pieces[0].length",
            "10 ft"
        };
        Page result = technician.submit("/pumps/" + unit.id() + "/flow-test", with(drum, "press", "work"));
        assertThat(result.text()).contains("of reference", "±");
        assertThat(readings.flowTests(unit.id())).isEmpty();

        Page kept = technician.submit("/pumps/" + unit.id() + "/flow-test", with(drum, "press", "keep"));
        assertThat(kept.status()).isEqualTo(302);
        assertThat(readings.capacity(unit.id()).orElseThrow().fraction()).isBetween(0.5, 0.8);
        assertThat(technician.open("/pumps/" + unit.id()).text()).contains("Clean, measure the gap, test again");

        technician.submit("/pumps/" + unit.id() + "/flow-test", with(drum, "press", "keep", "rig", "again"));
        assertThat(care.tasksOf(unit.id()))
                .filteredOn(task -> task.title().startsWith("Clean, measure the gap"))
                .hasSize(1);
    }

    private static String[] with(String[] form, String... more) {
        return Stream.concat(Stream.of(form), Stream.of(more)).toArray(String[]::new);
    }
}

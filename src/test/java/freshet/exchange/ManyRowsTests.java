package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.pumps.Pumps;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class ManyRowsTests {

    private static final int MANY = 10_000;

    @Autowired
    Exchange exchange;

    @Autowired
    Pumps pumps;

    @Autowired
    People people;

    Person me;

    @BeforeEach
    void signIn() {
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
    }

    private static NamedFile file(String name, String heading, int rows, IntFunction<String> row) {
        return new NamedFile(
                name,
                IntStream.range(0, rows)
                        .mapToObj(row)
                        .collect(Collectors.joining("\n", heading + "\n", "\n"))
                        .getBytes(StandardCharsets.UTF_8));
    }

    static List<NamedFile> fleet(int units) {
        int sites = Math.max(1, units / 20);
        return List.of(
                file("customers.csv", "customer", sites, n -> "Customer " + n),
                file(
                        "sites.csv",
                        "site,time zone,customer,opening,closing",
                        sites,
                        n -> "Site " + n + ",America/Chicago,Customer " + n + ",15 Feb to 20 Mar,1 Oct to 15 Nov"),
                file("positions.csv", "site,position,position kind", sites, n -> "Site " + n + ",Pit,pit"),
                file(
                        "models.csv",
                        "model,pump kind,drive,flow 1 (gpm),head 1 (ft),flow 2 (gpm),head 2 (ft)",
                        1,
                        n -> "Sump,sump with float,single phase,0,24,48,2"),
                file(
                        "units.csv",
                        "tag,serial,model,site,position,customer,in care from",
                        units,
                        n -> "T-%05d,S%d,Sump,Site %d,Pit,Customer %d,2024-03-01"
                                .formatted(n, n, n % sites, n % sites)),
                file(
                        "kit.csv",
                        "tag,piece,description,bore (in)",
                        units,
                        n -> "T-%05d,hose,Discharge hose,1.5".formatted(n)),
                file(
                        "readings.csv",
                        "tag,meter,read at,value",
                        units,
                        n -> "T-%05d,run hours,2026-03-01 08:00,%d".formatted(n, n)));
    }

    private static <T> T timed(String what, Supplier<T> work) {
        long start = System.nanoTime();
        T done = work.get();
        System.out.printf(
                "%s: %.1f s%n",
                what, Duration.ofNanos(System.nanoTime() - start).toMillis() / 1000.0);
        return done;
    }

    @Test
    void takesInTenThousandUnits() {
        List<NamedFile> fleet = fleet(MANY);
        Preview shown = timed("looked through 31,501 rows", () -> exchange.preview(fleet, me));
        assertThat(shown.problems()).isEmpty();
        assertThat(pumps.activeUnitIds()).isEmpty();

        Preview done = timed("took them in", () -> exchange.takeIn(fleet, shown.fingerprint(), me));
        assertThat(done.added()).isEqualTo(3 * MANY + 3 * MANY / 20 + 1);
        assertThat(pumps.activeUnitIds()).hasSize(MANY);

        Preview again = timed("looked through them again", () -> exchange.preview(fleet, me));
        assertThat(again.nothingToDo()).isTrue();
        assertThat(again.same()).isEqualTo(done.added());

        byte[] units = timed("wrote the units out", () -> exchange.export(FileKind.UNITS, me));
        assertThat(new String(units, StandardCharsets.UTF_8).lines()).hasSize(MANY + 1);
    }
}

package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Window;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ClassPathResource;

@FreshetTest
class ExampleFilesTests {

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

    Person me;

    @BeforeEach
    void signIn() {
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
    }

    static List<NamedFile> example() {
        return Stream.of(FileKind.values())
                .map(kind -> resource("example/" + kind.word() + ".csv"))
                .toList();
    }

    static NamedFile resource(String path) {
        try {
            return new NamedFile(
                    path.substring(path.lastIndexOf('/') + 1), new ClassPathResource(path).getContentAsByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void takesInTheExampleYard() {
        Preview done = exchange.takeIn(example(), me);

        assertThat(done.changed()).isZero();
        assertThat(done.same()).isZero();
        List<Unit> units = pumps.units(pumps.activeUnitIds());
        assertThat(units).hasSize(66);
        Map<String, Long> fleets = units.stream()
                .collect(Collectors.groupingBy(unit -> unit.tag().substring(0, 2), Collectors.counting()));
        assertThat(fleets).isEqualTo(Map.of("BF", 28L, "QM", 22L, "OS", 16L));
        assertThat(places.positions()).hasSize(15);
        assertThat(places.sites().stream().filter(site -> "Quillmere Lettings".equals(site.customerName())))
                .hasSize(9);
        assertThat(places.sites().stream()
                        .flatMap(site -> site.windows().stream())
                        .anyMatch(Window::wraps))
                .isTrue();
        Site juniper = places.siteNamed("Juniper Lane Nursery").orElseThrow();
        assertThat(juniper.windows()).hasSize(3);

        Unit loaner = pumps.unitTagged("BF-07").orElseThrow();
        assertThat(loaner.model().curve().headAt(0)).isEqualTo(25 * 0.3048);
        assertThat(loaner.kit()).hasSize(5);
        Unit trash = pumps.unitTagged("BF-19").orElseThrow();
        assertThat(readings.log(trash.id(), MeterKind.RUN_HOURS).lifetime())
                .isEqualByComparingTo(new BigDecimal("412.6"));
    }

    @Test
    void changesNothingWhenTakenInAgain() {
        Preview first = exchange.takeIn(example(), me);
        Preview again = exchange.preview(example(), me);

        assertThat(again.problems()).isEmpty();
        assertThat(again.nothingToDo()).isTrue();
        assertThat(again.same()).isEqualTo(first.added());
    }
}

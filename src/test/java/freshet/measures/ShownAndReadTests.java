package freshet.measures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What a page shows is read back as what it was, within its rounding, in both systems and both languages. */
class ShownAndReadTests {

    private static final Locale SPANISH = Locale.forLanguageTag("es-US");

    static Stream<Arguments> quantities() {
        return Stream.of(Quantity.values())
                .flatMap(quantity -> Stream.of(UnitSystem.values()).map(system -> Arguments.of(quantity, system)));
    }

    @ParameterizedTest
    @MethodSource("quantities")
    void readsBackWhatItShows(Quantity quantity, UnitSystem system) {
        Random random = new Random(7);
        for (int i = 0; i < 300; i++) {
            double inside = Math.pow(10, random.nextDouble() * 5) * (random.nextInt(8) == 0 ? -1 : 1);
            String shown = quantity.show(inside, system);
            double half = Math.abs(quantity.parse("1 " + quantity.unit(system), system)
                    - quantity.parse("0 " + quantity.unit(system), system));
            for (UnitSystem reader : UnitSystem.values()) {
                assertThat(quantity.parse(shown, reader)).as(shown).isCloseTo(inside, within(0.5 * half + 1e-9));
            }
            assertThat(quantity.show(quantity.parse(shown, system), system)).isEqualTo(shown);
            assertThat(quantity.parse(quantity.input(inside, system), system))
                    .isCloseTo(inside, within(1e-5 * Math.abs(inside) + 1e-4));
        }
    }

    @Test
    void readsBackWhatAPageShowsInEitherLanguage() {
        Random random = new Random(11);
        for (Locale locale : new Locale[] {Locale.ENGLISH, SPANISH}) {
            for (UnitSystem system : UnitSystem.values()) {
                Show show = new Show(system, locale, LocalDate.parse("2026-03-14"));
                for (int i = 0; i < 200; i++) {
                    double inside = random.nextDouble() * 3000;
                    assertThat(Quantity.FLOW.parse(show.flow(inside), system)).isCloseTo(inside, within(0.02));
                    assertThat(Quantity.HEAD.parse(show.head(inside), system)).isCloseTo(inside, within(0.02));
                    assertThat(Quantity.BORE.parse(show.bore(inside), system)).isCloseTo(inside, within(0.06));
                    assertThat(Numbers.parse(show.number(inside, 2))).isCloseTo(inside, within(0.0051));
                    long minutes = random.nextInt(5000);
                    assertThat(Durations.parseMinutes(show.minutes(minutes))).isEqualTo(minutes);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "FLOW | 2640 | US | 0.2 | 228 | 2640 gph",
                "FLOW | 2640 gpm | SI | 0.2 | 228 | 2640 gph",
                "HEAD | 12 | US | 7 | 10 | 12 psi",
                "BORE | 50 | US | 9.5 | 203.2 | 50 mm",
                "BORE | 1.5 | SI | 9.5 | 203.2 | 1.5 in",
                "CURRENT | 44 | SI | 1 | 20 | 4.4 A",
                "TEMPERATURE | 68 | SI | 0 | 45 | 68 °F"
            })
    void knowsWhatWasLikelyMeant(
            Quantity quantity, String typed, UnitSystem system, double low, double high, String meant) {
        assertThat(quantity.meant(typed, system, low, high)).contains(meant);
    }

    @Test
    void guessesNothingWhereNoReadingIsUsual() {
        assertThat(Quantity.CURRENT.meant("9000", UnitSystem.SI, 1, 20)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2h 15,2.25", "2:15,2.25", "2.25,2.25", "45 min,0.75", "'1,200 h',1200", "1 1/2,1.5", "2 horas,2"})
    void readsHours(String typed, double hours) {
        assertThat(Durations.parseHours(typed)).isCloseTo(hours, within(1e-9));
    }

    @Test
    void showsWhatAnotherUnitWasUnderstoodAs() {
        Show show = new Show(UnitSystem.US, Locale.ENGLISH, LocalDate.parse("2026-03-14"));
        assertThat(show.understood("150 L/min", "gpm")).isEqualTo("39.6\u00a0gpm");
        assertThat(show.understood("12 psi", "ft")).isEqualTo("27.7\u00a0ft");
        assertThat(show.understood("4 1/2", "in")).isEqualTo("4.500\u00a0in");
        assertThat(show.understood("40", "gpm")).isNull();
        assertThat(show.understood("fast", "gpm")).isNull();
        assertThat(show.understood(null, "gpm")).isNull();
    }
}

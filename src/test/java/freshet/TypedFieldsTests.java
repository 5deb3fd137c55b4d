package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every field for a number, by the fragment that draws it, and how it is read: with a unit and a question when it is unusual, with a
 * unit alone, as a time, or as a plain number. A field that stands in none of these lists fails.
 */
class TypedFieldsTests {

    private static final Path TEMPLATES = Path.of("src/main/resources/templates");
    private static final Path JAVA = Path.of("src/main/java/freshet");

    /** Asked about when it is unusual; the class that reads it. */
    private static final Map<String, String> QUESTIONED = Map.ofEntries(
            Map.entry(
                    "jobs/sheet flow volume area depth inflow solids cordLength volts amps suction altitude",
                    "jobs/JobReader"),
            Map.entry("jobs/parts lift water", "jobs/JobReader"),
            Map.entry("jobs/pump-or-line flow amps outlet gauge gaugeHeight gaugeBore", "jobs/SplitReader"),
            Map.entry("layout/pieces bore toBore length", "readings/PieceForm"),
            Map.entry("pumps/kit bore outletBore length", "pumps/KitForm"),
            Map.entry(
                    "pumps/model-form powerW currentA inletMm outletMm solidsMm maxLiquidC speedRpm maxStartsPerHour curveUncertainty"
                            + " minRunMinutesPerStart",
                    "pumps/ModelChecks"),
            Map.entry(
                    "readings/flow-test container lift pumpOutlet gauge gaugeHeight gaugeBore shutOff water volts amps",
                    "readings/FlowTestForm"),
            Map.entry("readings/flow-test by.pitDiameter by.pitArea by.jetBore", "readings/FlowByForm"));

    /** Asked about in another way: by the curve, the plate or the last reading; shown by the tests of their pages. */
    private static final String ASKED_OTHERWISE =
            "pumps/model-form flow head shutOffHead openFlow voltageV frequencyHz;"
                    + "care/lines answer asLeft;readings/reading value;readings/flow-test meterFlow by.meter by.fall shutOffHeight";

    /** Read with any unit of their kind; nothing tells what is usual for them. */
    private static final String WITH_UNIT =
            "layout/pieces roughness;checklists/line passLow passHigh watchLow watchHigh;"
                    + "readings/flow-test by.riseBefore by.riseAfter by.levelUncertainty by.meterFixed by.jetReach by.jetFall by.jetLengths"
                    + " containerUncertainty heightUncertainty gaugeUncertainty";

    private static final String TIMES =
            "checklists/edit minutes;checklists/new minutes;hands/hand hours;jobs/sheet hours;"
                    + "repairs/plan labourMinutes;wear/figures age season scale;"
                    + "readings/flow-test lap by.fallSeconds by.riseBeforeSeconds by.riseAfterSeconds timingUncertainty";

    /** Counts, money, parts of a hundred, what a meter shows, days: no unit but the one beside the field. */
    private static final String PLAIN = "hands/list percent;hire/parts hours fuel kit;jobs/pump-or-line flowDoubt;"
            + "layout/pieces k c;notices/choices overdueDays;places/site-form fromDay toDay;pumps/kit quantity;"
            + "pumps/model-form dutyValue;readings/flow-test by.displaced by.areaUncertainty by.meterPercent by.jetPercent"
            + " frequency speed;readings/meter-swap lastValue firstValue rollsOverAt;readings/reading rollsOverAt;"
            + "repairs/plan quantity unitPrice leadDays labourRate otherCost priceNew lifeYears;"
            + "rules/form opensDaysBefore graceDays accessFromDay accessToDay;rules/triggers count every first limit days;"
            + "tags/labels start;wear/figures planned failure shape demand units rate lead peak level;wear/unit threshold";

    private static final Pattern DRAWN = Pattern.compile("(?:fields :: input|pieces :: (cell))\\((name=.*?)\\)\\}\"");
    private static final Pattern RAW =
            Pattern.compile("<input[^>]*inputmode=\"(?:decimal|numeric)\"[^>]*th:name=\"([^\"]*)\"");
    private static final Pattern LAST_NAME = Pattern.compile(
            "name=(?:\\$\\{[^}]*?'([\\w.]+)'\\}|'([\\w.]+)'|\\|(?:\\$\\{[^}]*\\})?([\\w.]*)(?:\\$\\{[^}]*\\})?[^|]*\\|)");

    @Test
    void knowsHowEveryNumberIsRead() throws IOException {
        Set<String> drawn = new TreeSet<>();
        try (Stream<Path> tree = Files.walk(TEMPLATES)) {
            tree.filter(file -> file.toString().endsWith(".html")).forEach(file -> drawn.addAll(drawn(file)));
        }
        Set<String> known = new TreeSet<>(fields(
                String.join(";", String.join(";", QUESTIONED.keySet()), ASKED_OTHERWISE, WITH_UNIT, TIMES, PLAIN)));

        assertThat(drawn).isEqualTo(known);
    }

    private static Set<String> drawn(Path file) {
        String page = TEMPLATES.relativize(file).toString().replace(".html", " ");
        String html = read(file);
        Set<String> drawn = new TreeSet<>();
        for (MatchResult field : DRAWN.matcher(html).results().toList()) {
            String call = field.group(2);
            if (field.group(1) != null || call.matches("(?s).*(unit=|mode='(decimal|numeric)').*")) {
                drawn.add(page + name(call));
            }
        }
        for (MatchResult raw : RAW.matcher(html).results().toList()) {
            drawn.add(page + raw.group(1).replaceAll(".*'\\.(\\w+)'.*", "$1"));
        }
        return drawn;
    }

    private static String name(String call) {
        MatchResult name = LAST_NAME.matcher(call).results().findFirst().orElseThrow(() -> new AssertionError(call));
        return Stream.of(1, 2, 3)
                .map(name::group)
                .filter(each -> each != null)
                .findFirst()
                .orElseThrow();
    }

    private static Set<String> fields(String lists) {
        return Arrays.stream(lists.split(";"))
                .flatMap(list -> {
                    String[] words = list.split(" ");
                    return Arrays.stream(words).skip(1).map(word -> words[0] + " " + word);
                })
                .collect(Collectors.toSet());
    }

    static Stream<String> questioned() {
        return QUESTIONED.entrySet().stream()
                .flatMap(list ->
                        fields(list.getKey()).stream().map(field -> field.split(" ")[1] + " " + list.getValue()));
    }

    @ParameterizedTest
    @MethodSource("questioned")
    void asksAboutWhatIsUnusualThere(String field) {
        String[] parts = field.split(" ");
        String source = read(JAVA.resolve(parts[1] + ".java"));

        assertThat(source)
                .containsPattern("(usual|rated|bounds\\s*\\.quantity)\\(\\s*((path|at) \\+ )?\""
                        + Pattern.quote(parts[0]) + "\"");
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The one style sheet is whole: a rule that a merge left open would swallow all that follow it. */
class StyleSheetTests {

    @Test
    void closesEveryRuleBeforeTheNextAtTheEdge() throws IOException {
        List<String> lines = Files.readAllLines(Path.of("src/main/resources/static/app.css"));
        int open = 0;
        for (int at = 0; at < lines.size(); at++) {
            String line = lines.get(at);
            if (line.startsWith("@") || line.startsWith("/* ----------")) {
                assertThat(open).as("rules left open before line " + (at + 1)).isZero();
            }
            open += count(line, '{') - count(line, '}');
        }
        assertThat(open).isZero();
    }

    @Test
    void movesNothing() throws IOException {
        // whoever asked for less motion gets none, because nobody gets any
        assertThat(Files.readString(Path.of("src/main/resources/static/app.css")))
                .doesNotContainPattern("(?m)(transition|animation|scroll-behavior)\\s*:");
    }

    private static int count(String line, char brace) {
        return (int) line.chars().filter(each -> each == brace).count();
    }
}

package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the README says to type, set and look at is so. */
class ReadmeTests {

    private final String readme = read("README.md");
    private final String settings = read("src/main/resources/application.yaml");

    @Test
    void namesDefaultsThatStandInTheSettings() {
        assertThat(readme)
                .contains("`freshet.data-dir`")
                .contains("`~/.freshet`")
                .contains("`8080`, `127.0.0.1`");
        assertThat(settings)
                .contains("data-dir: ${user.home}/.freshet\n")
                .contains("port: 8080\n")
                .contains("address: 127.0.0.1\n");
        assertThat(readme).contains("~/.freshet-example");
        assertThat(read("src/main/resources/application-example.yaml"))
                .contains("data-dir: ${user.home}/.freshet-example\n");
    }

    @Test
    void givesCommandsThatTheBuildKnows() {
        String pom = read("pom.xml");
        assertThat(readme).contains("mvn spring-boot:run -Pexample").contains("mvn verify");
        assertThat(pom).contains("<id>example</id>").contains("<id>bench</id>");
        assertThat(read(".ci/run")).contains("mvn -B --no-transfer-progress verify");
    }

    @Test
    void showsAPictureAndLeadsToFilesThatExist() {
        for (MatchResult link :
                Pattern.compile("]\\(([^)#:]+)\\)").matcher(readme).results().toList()) {
            assertThat(Path.of(link.group(1))).exists();
        }
        assertThat(readme).contains("![").contains("DEVELOPERS.md");
    }

    private static String read(String file) {
        try {
            return Files.readString(Path.of(file));
        } catch (IOException unreadable) {
            throw new java.io.UncheckedIOException(unreadable);
        }
    }
}

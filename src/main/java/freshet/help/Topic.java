package freshet.help;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

/** What there is a page of help about, with the addresses of the pages it explains; the first that fits counts. */
enum Topic {
    FIRST_STEPS("/welcome", "/sign-in"),
    TODAY("/"),
    FLEET("/pumps", "/find", "/t/{tag}"),
    MODELS("/pumps/models/**"),
    METER("/pumps/{id}/reading", "/pumps/{id}/readings", "/pumps/{id}/meter-swap"),
    FLOW_TEST("/pumps/{id}/flow-test", "/flow-tests/**"),
    FINDING("/pumps/{id}/finding", "/findings/**"),
    TAG_OUT("/pumps/{id}/tag-out"),
    WEAR("/pumps/{id}/wear"),
    ISSUE("/pumps/{id}/issue", "/hires/**"),
    RULES("/pumps/{id}/rules", "/rules/**"),
    PHOTOS("/pumps/{id}/photos", "/tasks/{id}/photos"),
    REGISTER("/pumps/new", "/pumps/{id}/edit", "/pumps/{id}/move", "/pumps/{id}/kit", "/pumps/{id}/retire"),
    UNIT("/pumps/{id}"),
    TASK("/tasks/**"),
    RECORD("/records/**"),
    CHECKLISTS("/checklists/**"),
    PLACES("/places/**"),
    HANDS("/season/hands/**"),
    SEASON("/season/**"),
    ROUNDS("/rounds/**"),
    HAPPENINGS("/happenings/**"),
    REPAIRS("/repairs/**"),
    PUMP_OR_LINE("/jobs/pump-or-line"),
    JOBS("/jobs/**"),
    FIGURES("/fleet-figures"),
    IMPORT("/import/**"),
    LABELS("/labels/**"),
    SCAN("/scan"),
    NO_SIGNAL("/take-along/**", "/offline/**"),
    MAIL("/notices/**"),
    TIMETABLE("/timetable"),
    PEOPLE("/people/**"),
    ACCOUNT("/account/**", "/api-guide");

    private final List<PathPattern> pages;

    Topic(String... pages) {
        this.pages = Arrays.stream(pages)
                .map(PathPatternParser.defaultInstance::parse)
                .toList();
    }

    /** As it stands in the address of its page. */
    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Optional<Topic> of(String path) {
        PathContainer page = PathContainer.parsePath(path);
        return Stream.of(values())
                .filter(topic -> topic.pages.stream().anyMatch(pattern -> pattern.matches(page)))
                .findFirst();
    }

    static Optional<Topic> called(String word) {
        return Stream.of(values()).filter(topic -> topic.word().equals(word)).findFirst();
    }
}

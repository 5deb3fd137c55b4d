package freshet.help;

import freshet.people.NotFound;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** The pages of help: one for each kind of page, and the list of them. */
@Controller
class HelpController {

    private static final int MOST_LINES = 12;

    private final MessageSource messages;

    HelpController(MessageSource messages) {
        this.messages = messages;
    }

    @GetMapping("/help")
    String all(Model model) {
        model.addAttribute("topics", words());
        return "help/all";
    }

    @GetMapping("/help/{word}")
    String about(@PathVariable String word, Model model, Locale locale) {
        Topic topic = Topic.called(word).orElseThrow(() -> new NotFound("help", word));
        model.addAttribute("topic", topic.word());
        model.addAttribute("lines", lines(topic, locale));
        model.addAttribute("topics", words());
        return "help/about";
    }

    private static List<String> words() {
        return Stream.of(Topic.values()).map(Topic::word).toList();
    }

    private List<String> lines(Topic topic, Locale locale) {
        return IntStream.rangeClosed(1, MOST_LINES)
                .mapToObj(line -> line(topic, line, locale))
                .takeWhile(line -> line != null)
                .toList();
    }

    private @Nullable String line(Topic topic, int line, Locale locale) {
        return messages.getMessage("help." + topic.word() + "." + line, null, null, locale);
    }
}

package freshet.notices;

import java.util.Map;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/** Sets a letter as plain text and as simple HTML; both say the same. */
@Component
class LetterPaper {

    private static final String INDENT = "    ";

    private final ITemplateEngine templates;

    LetterPaper(ITemplateEngine templates) {
        this.templates = templates;
    }

    String html(Letter letter) {
        return templates.process(
                "notices/letter", new Context(LocaleContextHolder.getLocale(), Map.of("letter", letter)));
    }

    String text(Letter letter) {
        StringBuilder text = new StringBuilder();
        for (Letter.Chapter chapter : letter.chapters()) {
            text.append(chapter.heading())
                    .append('\n')
                    .append("-".repeat(Math.min(chapter.heading().length(), 60)))
                    .append('\n');
            chapter.sentences().forEach(sentence -> text.append(sentence).append('\n'));
            chapter.parts().forEach(part -> part(part, text));
            text.append('\n');
        }
        letter.closing().forEach(sentence -> text.append(sentence).append('\n'));
        for (Letter.Link link : letter.links()) {
            text.append(link.words()).append(":\n").append(link.address()).append('\n');
        }
        return text.toString();
    }

    private static void part(Letter.Part part, StringBuilder text) {
        text.append('\n').append(part.heading()).append('\n');
        for (Letter.Item item : part.items()) {
            text.append("  ")
                    .append(item.about())
                    .append(item.about().isEmpty() ? "" : "  ")
                    .append(item.words())
                    .append('\n');
            if (item.address() != null) {
                text.append(INDENT).append(item.address()).append('\n');
            }
        }
    }
}

package freshet.phrases;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Says stored texts on a page in the language of whoever reads it. */
public record Said(Locale locale) {

    public @Nullable String of(@Nullable String text) {
        return text == null ? null : Phrases.said(locale, text);
    }
}

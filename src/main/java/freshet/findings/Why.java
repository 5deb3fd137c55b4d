package freshet.findings;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSourceResolvable;
import org.springframework.context.support.DefaultMessageSourceResolvable;

/** A reason in words that somebody wrote, or as a message with what it is filled with, to be read in the reader's language. */
public record Why(@Nullable String words, @Nullable String code, List<String> arguments) {

    public static Why typed(String words) {
        return new Why(words, null, List.of());
    }

    public static Why of(String code, String... arguments) {
        return new Why(null, code, List.of(arguments));
    }

    /** What a page or a mail says, as an argument of its own message too. */
    public MessageSourceResolvable said() {
        return code == null
                ? new DefaultMessageSourceResolvable(null, null, words)
                : new DefaultMessageSourceResolvable(new String[] {code}, arguments.toArray());
    }

    @Override
    public String toString() {
        return words == null ? code + arguments : words;
    }
}

package freshet.tags;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A tag as somebody typed it, with the check character when one was typed after it: {@code BF-07}, {@code bf-07 f}, {@code BF-07.F}. */
record TypedTag(String tag, @Nullable Character check) {

    // a tag has letters, digits and hyphens, so any other mark parts the two
    private static final Pattern WITH_CHECK = Pattern.compile("([A-Za-z0-9-]{1,16})[\\s./*:]+([A-Za-z0-9])");

    static TypedTag of(String typed) {
        String text = typed.strip();
        Matcher parted = WITH_CHECK.matcher(text);
        return parted.matches()
                ? new TypedTag(
                        parted.group(1),
                        parted.group(2).toUpperCase(Locale.ROOT).charAt(0))
                : new TypedTag(text, null);
    }

    /** The check character was typed and is not the tag's. */
    boolean contradictsItself() {
        return check != null && check != CheckCharacter.of(tag);
    }
}

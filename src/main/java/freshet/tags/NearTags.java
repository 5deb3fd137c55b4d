package freshet.tags;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;

/** The tags that one slip of the finger away would be typed as this one: a character wrong, missing, too many, or two swapped. */
final class NearTags {

    private static final String CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-";

    /** The longest that a tag can be. */
    private static final int LONGEST = 16;

    private NearTags() {}

    /** At most about 1,300, all of them looked up at once by the index of tags; none for what is no tag. */
    static Set<String> of(String typed) {
        Set<String> near = new LinkedHashSet<>();
        String tag = typed.toUpperCase(Locale.ROOT);
        if (!tag.matches("[A-Z0-9-]{1," + (LONGEST + 1) + "}")) {
            return near;
        }
        for (int at = 0; at <= tag.length(); at++) {
            String before = tag.substring(0, at);
            String from = tag.substring(at);
            for (char each : CHARACTERS.toCharArray()) {
                near.add(before + each + from);
                if (!from.isEmpty()) {
                    near.add(before + each + from.substring(1));
                }
            }
            if (!from.isEmpty()) {
                near.add(before + from.substring(1));
            }
            if (from.length() > 1) {
                near.add(before + from.charAt(1) + from.charAt(0) + from.substring(2));
            }
        }
        near.remove(tag);
        near.removeIf(each -> each.length() > LONGEST);
        return near;
    }
}

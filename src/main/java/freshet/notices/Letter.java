package freshet.notices;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a mail says, before it is set as plain text and as HTML: chapters, closing words, and links. */
record Letter(String title, List<Chapter> chapters, List<String> closing, List<Link> links) {

    /** A place or a subject, in sentences and lists. */
    record Chapter(String heading, List<String> sentences, List<Part> parts) {}

    /** A list under its heading. */
    record Part(String heading, List<Item> items) {}

    /** One line: what it is about, what is said of it, and where to look. */
    record Item(String about, String words, @Nullable String address) {}

    record Link(String words, String address) {}
}

package freshet.places;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What a customer, site, window or position must be to stand in the register; fields are named under a prefix. */
final class PlaceChecks {

    static final int LONGEST_NAME = 100;
    static final int LONGEST_WINDOW_NAME = 60;
    static final int LONGEST_LINE = 200;
    static final int LONGEST_NOTE = 2000;
    static final int MOST_WINDOWS = 12;

    private PlaceChecks() {}

    static List<Refused.Wrong> of(String prefix, CustomerDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        name(prefix + "name", draft.name(), LONGEST_NAME, wrongs);
        length(prefix + "phone", draft.phone(), LONGEST_NAME, wrongs);
        length(prefix + "note", draft.note(), LONGEST_NOTE, wrongs);
        return wrongs;
    }

    static List<Refused.Wrong> of(String prefix, PositionDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        name(prefix + "name", draft.name(), LONGEST_NAME, wrongs);
        length(prefix + "note", draft.note(), LONGEST_NOTE, wrongs);
        return wrongs;
    }

    static List<Refused.Wrong> of(String prefix, SiteDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        name(prefix + "name", draft.name(), LONGEST_NAME, wrongs);
        length(prefix + "address", draft.address(), LONGEST_LINE, wrongs);
        List<WindowDraft> windows = draft.windows() == null ? List.of() : draft.windows();
        if (windows.size() > MOST_WINDOWS) {
            wrongs.add(at(prefix + "windows", "places.window.many", MOST_WINDOWS));
        }
        for (int row = 0; row < windows.size(); row++) {
            window(prefix + "windows[" + row + "].", windows.get(row), windows.subList(0, row), wrongs);
        }
        return wrongs;
    }

    private static void window(String prefix, WindowDraft draft, List<WindowDraft> before, List<Refused.Wrong> wrongs) {
        name(prefix + "name", draft.name(), LONGEST_WINDOW_NAME, wrongs);
        Window window = window(draft);
        if (window.overlaps(window)) {
            wrongs.add(at(prefix + "toDay", "places.window.longerThanAYear"));
        }
        for (WindowDraft other : before) {
            if (other.kind() == draft.kind() && other.name().equalsIgnoreCase(draft.name())) {
                wrongs.add(at(prefix + "name", "places.window.nameTwice", draft.name()));
            } else if (other.kind() == draft.kind() && window.overlaps(window(other))) {
                wrongs.add(at(prefix + "fromDay", "places.window.overlaps", other.name()));
            }
        }
    }

    private static Window window(WindowDraft draft) {
        return new Window(0, 0, draft.kind(), draft.name(), draft.from(), draft.to());
    }

    /** Wrongs for every name that stands in the list before, ignoring case. */
    static List<Refused.Wrong> twice(List<String> names) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (int row = 0; row < names.size(); row++) {
            if (!seen.add(names.get(row).toLowerCase(Locale.ROOT))) {
                wrongs.add(at("rows[" + row + "].name", "places.rowTwice", names.get(row)));
            }
        }
        return wrongs;
    }

    private static void name(String field, String name, int longest, List<Refused.Wrong> wrongs) {
        if (name.isBlank()) {
            wrongs.add(at(field, "places.nameMissing"));
        }
        length(field, name, longest, wrongs);
    }

    private static void length(String field, @Nullable String text, int longest, List<Refused.Wrong> wrongs) {
        if (text != null && text.length() > longest) {
            wrongs.add(at(field, "places.tooLong", longest));
        }
    }
}

package freshet.places;

import java.time.ZoneId;
import java.util.List;
import java.util.Set;

/** The time zones that a site may be in: those named after a place, and UTC. */
final class Zones {

    private static final Set<String> KNOWN = ZoneId.getAvailableZoneIds();
    private static final List<String> OFFERED = KNOWN.stream()
            .filter(id -> id.contains("/") && !id.startsWith("Etc/") && !id.startsWith("SystemV/"))
            .sorted()
            .toList();

    private Zones() {}

    /** The names to choose from. */
    static List<String> offered() {
        return OFFERED;
    }

    static boolean known(String id) {
        return id.equals("UTC") || OFFERED.contains(id);
    }
}

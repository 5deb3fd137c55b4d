package freshet.places;

import java.util.Set;

/** What taking in sites did, and which of them got other windows or another zone. */
record SitesIntake(Intake counts, Set<Long> planningChanged) {}

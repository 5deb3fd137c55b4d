/** Overview: the pages that show several rooms, home, season, the fleet and the unit, and their pictures. Owns no table. */
@ApplicationModule(
        allowedDependencies = {
            "phrases",
            "measures",
            "hydraulics",
            "reliability",
            "people",
            "places",
            "timetable",
            "pumps",
            "happenings",
            "hire",
            "readings",
            "checklists",
            "photos",
            "findings",
            "board",
            "care",
            "fleet",
            "rounds",
            "offline",
            "hands",
            "repairs",
            "wear"
        })
@NullMarked
package freshet.overview;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

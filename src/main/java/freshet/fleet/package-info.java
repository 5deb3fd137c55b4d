/**
 * Room: the readiness of each unit with its reasons, the summary row of each unit, and the search over the fleet. It reads the rows of
 * the rooms below it and writes only its own.
 */
@ApplicationModule(
        allowedDependencies = {
            "phrases",
            "board",
            "care",
            "findings",
            "happenings",
            "checklists",
            "readings",
            "pumps",
            "places",
            "people",
            "timetable",
            "measures"
        })
@NullMarked
package freshet.fleet;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: digests and urgent mail about late work and danger, mail on its way, and the calendar feed of each place. */
@ApplicationModule(
        allowedDependencies = {
            "phrases",
            "fleet",
            "care",
            "board",
            "findings",
            "checklists",
            "pumps",
            "places",
            "people",
            "timetable",
            "measures"
        })
@NullMarked
package freshet.notices;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

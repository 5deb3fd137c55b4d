/** Room: tasks with their answers, signed records and their corrections. */
@ApplicationModule(
        allowedDependencies = {
            "board",
            "happenings",
            "findings",
            "checklists",
            "photos",
            "pumps",
            "places",
            "people",
            "measures"
        })
@NullMarked
package freshet.care;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

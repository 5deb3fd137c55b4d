/** Room: repair work for findings, its parts and costs, and what became of it. */
@ApplicationModule(
        allowedDependencies = {
            "care",
            "findings",
            "happenings",
            "readings",
            "checklists",
            "pumps",
            "places",
            "people",
            "measures"
        })
@NullMarked
package freshet.repairs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: what a technician takes along to where no signal is, and what comes back: once, in order, with nothing lost. */
@ApplicationModule(
        allowedDependencies = {
            "phrases",
            "rounds",
            "care",
            "fleet",
            "board",
            "findings",
            "checklists",
            "readings",
            "pumps",
            "places",
            "people",
            "measures"
        })
@NullMarked
package freshet.offline;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: what goes out on hire and comes back, what the hirer was told, and the figures of the hire desk. */
@ApplicationModule(
        allowedDependencies = {
            "fleet",
            "care",
            "findings",
            "readings",
            "happenings",
            "photos",
            "pumps",
            "places",
            "people",
            "measures"
        })
@NullMarked
package freshet.hire;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

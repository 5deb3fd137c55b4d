/** Example: the yard of an invented river town, entered through the doors so that a newcomer has something to look at. */
@ApplicationModule(
        allowedDependencies = {
            "measures",
            "people",
            "places",
            "pumps",
            "readings",
            "checklists",
            "photos",
            "findings",
            "rules",
            "board",
            "care",
            "repairs",
            "fleet",
            "happenings",
            "hire",
            "rounds",
            "hands",
            "exchange"
        })
@NullMarked
package freshet.example;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

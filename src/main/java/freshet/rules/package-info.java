/** Room: care rules, what makes work due, for which pumps, which of them is the nearest to a unit. */
@ApplicationModule(
        allowedDependencies = {"happenings", "checklists", "readings", "pumps", "places", "people", "measures"})
@NullMarked
package freshet.rules;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/**
 * Room: rounds, what somebody goes and does on a day in what order, with what came of each stop; assigning work; and how one gets in
 * at a place. It reads the rows of the rooms below it and writes only its own.
 */
@ApplicationModule(
        allowedDependencies = {"fleet", "care", "board", "checklists", "pumps", "places", "people", "measures"})
@NullMarked
package freshet.rounds;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

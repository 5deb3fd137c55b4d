/** Room: care rules that make work due, tasks with their answers, signed records and their corrections, the board of due work. */
@ApplicationModule(
        allowedDependencies = {"findings", "checklists", "readings", "pumps", "places", "people", "measures"})
@NullMarked
package freshet.care;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: what runs by itself, when it does by the clocks of our sites, and what became of it. */
@ApplicationModule(allowedDependencies = {"places", "people", "measures"})
@NullMarked
package freshet.timetable;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

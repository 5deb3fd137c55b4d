/** Room: customers, their sites with time zone and season windows, and the positions where a pump stands. */
@ApplicationModule(allowedDependencies = {"people", "measures"})
@NullMarked
package freshet.places;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

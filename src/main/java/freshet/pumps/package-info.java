/** Room: pump models with their rated curve, units with their tag, where each has stood, and the kit that goes with it. */
@ApplicationModule(allowedDependencies = {"hydraulics", "measures", "places", "people"})
@NullMarked
package freshet.pumps;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

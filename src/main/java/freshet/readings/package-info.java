/** Room: meters and what they showed, duty cycles, flow tests and the remaining capacity that they prove. */
@ApplicationModule(allowedDependencies = {"hydraulics", "measures", "reliability", "pumps", "places", "people"})
@NullMarked
package freshet.readings;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

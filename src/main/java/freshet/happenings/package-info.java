/** Room: what happened to a site, a position or a unit, such as storms, power failures, dry runs, hires and their return. */
@ApplicationModule(allowedDependencies = {"pumps", "places", "people", "measures"})
@NullMarked
package freshet.happenings;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

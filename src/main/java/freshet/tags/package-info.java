/** Room: what hangs on a pump to name it, its tag with a check character, the code to scan, the labels to print; and the way from it to the unit. */
@ApplicationModule(allowedDependencies = {"fleet", "pumps", "places", "people", "measures"})
@NullMarked
package freshet.tags;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

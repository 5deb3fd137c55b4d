/** Room: findings, opened with a severity and closed by a named person with words. */
@ApplicationModule(allowedDependencies = {"photos", "pumps", "places", "people", "measures"})
@NullMarked
package freshet.findings;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

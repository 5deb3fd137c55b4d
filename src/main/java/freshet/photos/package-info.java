/** Room: photos, looked at by their content, freed of what the camera knew of the place, kept once and never changed. */
@ApplicationModule(allowedDependencies = {"people", "measures"})
@NullMarked
package freshet.photos;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: for every page, what it is for and how to work with it, in plain words; owns no table. */
@ApplicationModule(allowedDependencies = {"people"})
@NullMarked
package freshet.help;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

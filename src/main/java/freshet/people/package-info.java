/** People: accounts, roles, sign-in, API tokens and the trail of what was done. */
@ApplicationModule(allowedDependencies = {"measures"})
@NullMarked
package freshet.people;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: the calculations of the two stones as a versioned JSON interface for programs, its description, and a page that explains it. */
@ApplicationModule(allowedDependencies = {"hydraulics", "reliability"})
@NullMarked
package freshet.api;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

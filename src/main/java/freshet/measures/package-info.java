/** Stone: the units that people read and type; SI inside, US customary or SI outside. Knows only Java. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package freshet.measures;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: checklists, their lines with limits and cautions, and how an answer is judged. */
@ApplicationModule(allowedDependencies = {"pumps", "people", "measures"})
@NullMarked
package freshet.checklists;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: the phrasebook, in which the texts of the checklists and rules that a new install begins with stand in the readers' languages. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package freshet.phrases;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

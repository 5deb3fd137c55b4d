/**
 * Room: who has how many minutes a week for care work, and what the season's work left comes to against them: which week is short, when it
 * would be finished, who will not be ready. It reads the rows of the rooms below it and writes only its own.
 */
@ApplicationModule(allowedDependencies = {"care", "board", "places", "people", "measures"})
@NullMarked
package freshet.hands;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Room: files in and out. What people keep in a spreadsheet is looked through, shown, then taken in whole or not at all. */
@ApplicationModule(allowedDependencies = {"measures", "people", "places", "pumps", "readings"})
@NullMarked
package freshet.exchange;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

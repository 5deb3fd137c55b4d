/**
 * Room: what a job asks for and which pump can do it, as worn as it is; and whether a weak flow is the pump's fault or the line's. Pages
 * only: every answer is worked out from the address and what the rooms below know, and nothing is kept.
 */
@ApplicationModule(allowedDependencies = {"measures", "hydraulics", "people", "pumps", "readings", "fleet"})
@NullMarked
package freshet.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

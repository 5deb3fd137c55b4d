/** Room: how units wear and how the fleet fails, with forecasts and their doubt. Pages and composition only; owns no table. */
@ApplicationModule(
        allowedDependencies = {
            "measures",
            "hydraulics",
            "reliability",
            "people",
            "places",
            "pumps",
            "readings",
            "checklists",
            "findings",
            "care",
            "fleet"
        })
@NullMarked
package freshet.wear;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

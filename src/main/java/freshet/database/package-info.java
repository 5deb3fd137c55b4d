/** Starts the embedded PostgreSQL when no datasource is configured; nothing else. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package freshet.database;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

/** Freshet: maintenance and seasonal care for a fleet of small pumps. */
@NullMarked
package freshet;

import org.jspecify.annotations.NullMarked;

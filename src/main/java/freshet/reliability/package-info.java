/** Stone room: trends, lives with censoring, repairable units, replacement age, spares and maintenance indicators, as plain numbers. */
@NullMarked
package freshet.reliability;

import org.jspecify.annotations.NullMarked;

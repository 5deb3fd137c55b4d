/**
 * Stone room of hydraulics: water, lines, pump curves, duty points, drawdown, cycling, flow tests and remaining capacity.
 * It knows only Java and the numerics library. Units stand in the names; what is out of range is refused with {@link
 * freshet.hydraulics.OutOfRange}.
 */
@NullMarked
package freshet.hydraulics;

import org.jspecify.annotations.NullMarked;

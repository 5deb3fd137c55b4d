package freshet.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * What a field of a request means and the limits within which it is taken; read when a request comes in and when the interface is
 * described, so that the two cannot differ. Limits of numbers hold for each number of a list. A field may be left out when its
 * component is nullable or has a usual value.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
@interface Asked {

    /** One phrase. */
    String value();

    String unit() default "";

    double from() default Double.NEGATIVE_INFINITY;

    double to() default Double.POSITIVE_INFINITY;

    int fewest() default 0;

    int most() default Integer.MAX_VALUE;

    /** Taken when the field is left out; NaN when there is none. */
    double usual() default Double.NaN;
}

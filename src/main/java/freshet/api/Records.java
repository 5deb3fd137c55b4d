package freshet.api;

import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** What reflection says about the records of requests and answers. */
final class Records {

    private Records() {}

    static Asked asked(RecordComponent component) {
        Asked asked = component.getAnnotation(Asked.class);
        if (asked == null) {
            throw new IllegalStateException(component + " does not say what it asks");
        }
        return asked;
    }

    static boolean mayBeNull(AnnotatedType type) {
        return type.isAnnotationPresent(Nullable.class);
    }

    /** Whether a request may leave the field out. */
    static boolean mayBeLeftOut(RecordComponent component) {
        return mayBeNull(component.getAnnotatedType())
                || !Double.isNaN(asked(component).usual());
    }

    static Object make(Class<?> type, @Nullable Object[] values) {
        Class<?>[] types = Arrays.stream(type.getRecordComponents())
                .map(RecordComponent::getType)
                .toArray(Class<?>[]::new);
        try {
            Constructor<?> constructor = type.getDeclaredConstructor(types);
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(type + " cannot be made", impossible);
        }
    }
}

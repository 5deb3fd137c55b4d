package freshet.api;

import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What reflection says of the record of a request or an answer, read once: its fields in order, and how it is made. */
record Blueprint(List<Field> fields, Constructor<?> constructor) {

    private static final Map<Class<?>, Blueprint> KNOWN = new ConcurrentHashMap<>();

    /**
     * One field.
     *
     * @param list whether it holds a list
     * @param kind of the value, or of each value of the list
     * @param asked what a request asks by it; null in an answer
     */
    record Field(
            String name,
            boolean list,
            Class<?> kind,
            boolean mayBeNull,
            @Nullable Asked asked) {

        /** Of a request. */
        Asked askedFor() {
            if (asked == null) {
                throw new IllegalStateException("the field " + name + " does not say what it asks");
            }
            return asked;
        }

        boolean hasUsual() {
            return !Double.isNaN(askedFor().usual());
        }

        boolean mayBeLeftOut() {
            return mayBeNull || hasUsual();
        }

        private static Field of(RecordComponent component) {
            AnnotatedType type = component.getAnnotatedType();
            boolean list = type instanceof AnnotatedParameterizedType;
            return new Field(
                    component.getName(),
                    list,
                    (Class<?>)
                            (type instanceof AnnotatedParameterizedType of
                                    ? of.getAnnotatedActualTypeArguments()[0].getType()
                                    : type.getType()),
                    type.isAnnotationPresent(Nullable.class),
                    component.getAnnotation(Asked.class));
        }
    }

    static Blueprint of(Class<?> type) {
        return KNOWN.computeIfAbsent(type, Blueprint::read);
    }

    private static Blueprint read(Class<?> type) {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return new Blueprint(Arrays.stream(components).map(Field::of).toList(), type.getDeclaredConstructor(types));
        } catch (NoSuchMethodException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    boolean has(String name) {
        return fields.stream().anyMatch(field -> field.name.equals(name));
    }

    /** The names, as a sentence lists them. */
    String names() {
        return fields.stream().map(Field::name).collect(Collectors.joining(", "));
    }

    Object make(@Nullable Object[] values) {
        try {
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(constructor + " does not take what was read", impossible);
        }
    }
}

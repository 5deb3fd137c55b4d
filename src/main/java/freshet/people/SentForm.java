package freshet.people;

import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.core.ResolvableType;
import org.springframework.validation.DataBinder;

/** Makes a form's record from fields that arrived otherwise than by a browser's form, just as a browser's would be. */
public final class SentForm {

    /** Rows beyond those that a browser's form may have are not read. */
    private static final Pattern READ = Pattern.compile("[^\\[]*(\\[(\\d{1,2}|[^\\d\\]][^\\]]*)][^\\[]*)*");

    private SentForm() {}

    public static <T extends Record> T of(Map<String, String> fields, Class<T> type) {
        Map<String, String> read = fields.entrySet().stream()
                .filter(field ->
                        field.getValue() != null && READ.matcher(field.getKey()).matches())
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        DataBinder binder = new DataBinder(null, "form");
        binder.setTargetType(ResolvableType.forClass(type));
        binder.construct(new DataBinder.ValueResolver() {
            @Override
            public @Nullable Object resolveValue(String name, Class<?> its) {
                return read.get(name);
            }

            @Override
            public Set<String> getNames() {
                return read.keySet();
            }
        });
        Object form = binder.getTarget();
        if (form == null) {
            throw new IllegalArgumentException("no " + type.getSimpleName() + " in " + read.keySet());
        }
        return type.cast(form);
    }
}

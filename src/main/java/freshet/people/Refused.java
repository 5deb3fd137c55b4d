package freshet.people;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.Errors;

/** A door refuses what was typed: each wrong names the form's field, a message key and its arguments. */
public final class Refused extends RuntimeException {

    private final transient List<Wrong> wrongs;

    public Refused(List<Wrong> wrongs) {
        super(wrongs.toString());
        this.wrongs = List.copyOf(wrongs);
    }

    /** One thing to put right; an empty field means the whole form. */
    public record Wrong(String field, String code, List<Object> arguments) {

        public static Wrong at(String field, String code, Object... arguments) {
            return new Wrong(field, code, List.of(arguments));
        }

        /** A question: it is unusual rather than wrong, and taken once somebody says that the text is so. */
        public static Wrong asked(String field, @Nullable String text, String code, Object... arguments) {
            List<Object> all = new ArrayList<>(List.of(arguments));
            all.add(new Tick(Tick.of(field, text)));
            return new Wrong(field, code, List.copyOf(all));
        }
    }

    /** What a form sends for "yes, it is so": the field with its text, so that another text is asked about again. */
    public record Tick(String value) {

        static String of(String field, @Nullable String text) {
            return field + "=" + Typed.textOrEmpty(text);
        }
    }

    /** What was asked, of the arguments of everything that stands in a form. */
    public static List<String> asked(List<Object @Nullable []> arguments) {
        return arguments.stream()
                .filter(each -> each != null && each.length > 0 && each[each.length - 1] instanceof Tick)
                .map(each -> ((Tick) each[each.length - 1]).value())
                .toList();
    }

    public static Refused because(String field, String code, Object... arguments) {
        return new Refused(List.of(Wrong.at(field, code, arguments)));
    }

    public List<Wrong> wrongs() {
        return wrongs;
    }

    /** Puts every wrong at its place in the form; one whose field the form does not have stands at its head. */
    public void into(Errors errors) {
        for (Wrong wrong : wrongs) {
            Object[] arguments = wrong.arguments().toArray();
            if (wrong.field().isEmpty()) {
                errors.reject(wrong.code(), arguments, wrong.code());
            } else {
                errors.rejectValue(wrong.field(), wrong.code(), arguments, wrong.code());
            }
        }
    }

    /** Throws one refusal for all that was gathered, if anything was. */
    public static void ifAny(List<Wrong> wrongs) {
        if (!wrongs.isEmpty()) {
            throw new Refused(new ArrayList<>(wrongs));
        }
    }
}

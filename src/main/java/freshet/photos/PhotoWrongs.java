package freshet.photos;

import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.validation.FieldError;

/** Puts a refusal into a form that photos were sent with: what is wrong with a photo stands at its field, which no form holds. */
public final class PhotoWrongs {

    private static final String AT = "photoWrongs";

    private PhotoWrongs() {}

    /** Fields of photos begin with {@code photo}; all others are the form's own. */
    public static void put(Refused refused, BindingResult errors, Model model) {
        Map<String, Wrong> photos = new HashMap<>();
        List<Wrong> others = new ArrayList<>();
        for (Wrong wrong : refused.wrongs()) {
            if (wrong.field().startsWith(Photos.FIELD)) {
                photos.put(wrong.field(), wrong);
                Object[] arguments = wrong.arguments().toArray();
                errors.addError(new FieldError(
                        errors.getObjectName(),
                        wrong.field(),
                        null,
                        false,
                        new String[] {wrong.code()},
                        arguments,
                        wrong.code()));
            } else {
                others.add(wrong);
            }
        }
        new Refused(others).into(errors);
        model.addAttribute(AT, photos);
    }
}

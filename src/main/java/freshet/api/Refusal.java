package freshet.api;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.web.ErrorResponseException;

/** A request that was understood and is refused, field by field. */
final class Refusal extends ErrorResponseException {

    /**
     * One field that is refused.
     *
     * @param field path such as {@code line.sections[0].innerDiameterMm}; empty for the whole request
     * @param message names value, unit and limit
     */
    record Wrong(String field, String message) {}

    private static final long serialVersionUID = 1L;

    Refusal(List<Wrong> wrongs) {
        super(HttpStatus.UNPROCESSABLE_CONTENT);
        setDetail("What is refused stands in errors, field by field.");
        getBody().setProperty("errors", wrongs);
    }

    Refusal(String field, String message) {
        this(List.of(new Wrong(field, message)));
    }
}

package freshet.api;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpMediaTypeNotSupportedException;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;

/** Answers calculations asked by programs; whatever is wrong is told as a problem document (RFC 9457). */
@RestController
class CalculationController {

    /** Largest body read, in bytes. */
    static final int LARGEST_BODY = 2 * 1024 * 1024;

    private static final Logger LOG = LoggerFactory.getLogger(CalculationController.class);

    /** Any method, so that a wrong one is told as a problem too. */
    @RequestMapping("/api/v1/calculations/{name}")
    ResponseEntity<byte[]> calculate(@PathVariable String name, HttpServletRequest request)
            throws IOException, HttpRequestMethodNotSupportedException, HttpMediaTypeNotSupportedException {
        Class<? extends Calculation> calculation = Calculations.BY_NAME.get(name);
        if (calculation == null) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND, "There is no calculation of this name.");
        }
        if (!HttpMethod.POST.matches(request.getMethod())) {
            throw new HttpRequestMethodNotSupportedException(request.getMethod(), List.of("POST"));
        }
        refuseUnlessJson(request);
        Calculation asked = RequestReader.read(Json.read(body(request)), calculation);
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_JSON).body(Json.write(asked.answer()));
    }

    private static void refuseUnlessJson(HttpServletRequest request) throws HttpMediaTypeNotSupportedException {
        String type = request.getContentType();
        try {
            if (type != null && MediaType.APPLICATION_JSON.includes(MediaType.parseMediaType(type))) {
                return;
            }
        } catch (InvalidMediaTypeException unreadable) {
            // no type at all is told in the same words
        }
        throw new HttpMediaTypeNotSupportedException(type, List.of(MediaType.APPLICATION_JSON));
    }

    private static byte[] body(HttpServletRequest request) throws IOException {
        byte[] body = new byte[0];
        if (request.getContentLengthLong() <= LARGEST_BODY) {
            body = request.getInputStream().readNBytes(LARGEST_BODY + 1);
        }
        if (request.getContentLengthLong() > LARGEST_BODY || body.length > LARGEST_BODY) {
            throw new ResponseStatusException(
                    HttpStatus.CONTENT_TOO_LARGE, "The body may have " + LARGEST_BODY + " bytes at most.");
        }
        return body;
    }

    @RequestMapping("/api/**")
    void nothingHere() {
        throw new ResponseStatusException(HttpStatus.NOT_FOUND, "There is nothing at this address.");
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> refuse(Exception refused) {
        if (refused instanceof ErrorResponse known) {
            return problem(known);
        }
        if (refused instanceof freshet.hydraulics.OutOfRange outside) {
            return problem(new Refusal(outside.field(), outside.getMessage()));
        }
        if (refused instanceof freshet.reliability.OutOfRange outside) {
            return problem(new Refusal(outside.field(), outside.getMessage()));
        }
        LOG.error("a calculation failed", refused);
        return problem(new ResponseStatusException(
                HttpStatus.INTERNAL_SERVER_ERROR, "This is a fault of ours; the log of this install says more."));
    }

    private static ResponseEntity<ProblemDetail> problem(ErrorResponse known) {
        return ResponseEntity.status(known.getStatusCode())
                .headers(known.getHeaders())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(known.getBody());
    }
}

package freshet.exchange;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;
import org.springframework.web.filter.OncePerRequestFilter;

/** Sends an upload that says itself to be too large back to its page before anybody reads it; the server would answer it with no page. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class TooLarge extends OncePerRequestFilter {

    private static final long MOST_BYTES = DataSize.ofMegabytes(26).toBytes();

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return request.getContentLengthLong() <= MOST_BYTES
                || !request.getRequestURI().equals(request.getContextPath() + "/import");
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        response.setStatus(HttpStatus.SEE_OTHER.value());
        response.setHeader(HttpHeaders.LOCATION, request.getContextPath() + "/import?tooLarge=yes");
    }
}

package freshet.photos;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;
import org.springframework.web.filter.OncePerRequestFilter;

/** Answers a form that says itself to be larger than the server takes with a page; unread, it would seem to lack its token. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
class TooMuch extends OncePerRequestFilter {

    private final long mostBytes;

    TooMuch(@Value("${spring.servlet.multipart.max-request-size}") DataSize most) {
        this.mostBytes = most.toBytes();
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return request.getContentLengthLong() <= mostBytes;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        response.sendError(HttpServletResponse.SC_REQUEST_ENTITY_TOO_LARGE);
    }
}

package freshet.photos;

import jakarta.servlet.FilterChain;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Collections;
import java.util.Enumeration;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
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
        request.setAttribute(RequestDispatcher.ERROR_STATUS_CODE, HttpServletResponse.SC_REQUEST_ENTITY_TOO_LARGE);
        request.getRequestDispatcher("/error").forward(new Unread(request), response);
    }

    /** The request as if it had no body, for nobody is to take that apart. */
    private static final class Unread extends HttpServletRequestWrapper {

        Unread(HttpServletRequest request) {
            super(request);
        }

        @Override
        public String getMethod() {
            return HttpMethod.GET.name();
        }

        @Override
        public @Nullable String getContentType() {
            return null;
        }

        @Override
        public @Nullable String getParameter(String name) {
            return null;
        }

        @Override
        public String @Nullable [] getParameterValues(String name) {
            return null;
        }

        @Override
        public Map<String, String[]> getParameterMap() {
            return Map.of();
        }

        @Override
        public Enumeration<String> getParameterNames() {
            return Collections.emptyEnumeration();
        }
    }
}

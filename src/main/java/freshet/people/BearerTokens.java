package freshet.people;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Reads the bearer token (RFC 6750) of a program and lets it in as the person it works for. */
@Component
class BearerTokens extends OncePerRequestFilter {

    private static final String SCHEME = "Bearer ";

    private final People people;

    BearerTokens(People people) {
        this.people = people;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String header = request.getHeader(HttpHeaders.AUTHORIZATION);
        if (header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())) {
            Optional<Person> person =
                    people.byToken(header.substring(SCHEME.length()).strip());
            person.ifPresent(who -> {
                SignedIn principal = new SignedIn(who.id(), who.signInName(), who.role(), true, null);
                SecurityContext context = SecurityContextHolder.createEmptyContext();
                context.setAuthentication(
                        UsernamePasswordAuthenticationToken.authenticated(principal, null, principal.getAuthorities()));
                SecurityContextHolder.setContext(context);
            });
        }
        chain.doFilter(request, response);
    }

    /** 401 as a problem document (RFC 9457). */
    static void refuse(HttpServletRequest request, HttpServletResponse response, AuthenticationException failure)
            throws IOException {
        response.setStatus(HttpStatus.UNAUTHORIZED.value());
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
        response.setContentType("application/problem+json");
        response.getWriter()
                .write("{\"type\":\"about:blank\",\"title\":\"Unauthorized\",\"status\":401,"
                        + "\"detail\":\"Send a live token as Authorization: Bearer <token>.\"}");
    }

    /** The filter belongs to the programs' chain alone, not to every request. */
    @Component
    static class OnlyInItsChain {

        @Bean
        FilterRegistrationBean<BearerTokens> bearerTokensNotEverywhere(BearerTokens filter) {
            FilterRegistrationBean<BearerTokens> registration = new FilterRegistrationBean<>(filter);
            registration.setEnabled(false);
            return registration;
        }
    }
}

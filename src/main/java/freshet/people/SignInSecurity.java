package freshet.people;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Set;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.security.config.annotation.method.configuration.EnableMethodSecurity;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.HttpStatusEntryPoint;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.authentication.SimpleUrlAuthenticationFailureHandler;
import org.springframework.security.web.authentication.UsernamePasswordAuthenticationFilter;
import org.springframework.security.web.firewall.StrictHttpFirewall;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.filter.OncePerRequestFilter;

/** Who gets in: form sign-in for people, bearer tokens for programs, strict headers for both. */
@Configuration(proxyBeanMethods = false)
@EnableMethodSecurity
class SignInSecurity {

    /** Nothing from elsewhere, nothing inline but the sheet itself. */
    private static final String CONTENT_POLICY = "default-src 'none'; style-src 'self' %s; script-src 'self';"
            + " img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self';"
            + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private static final String STOP = "/notices/stop/*";

    private static final AuthenticationEntryPoint SCRIPTS_WAIT = new HttpStatusEntryPoint(HttpStatus.UNAUTHORIZED);
    private static final AuthenticationEntryPoint PEOPLE_SIGN_IN = new LoginUrlAuthenticationEntryPoint("/sign-in");

    private static final Set<String> FOR_SCRIPTS = Set.of("/offline/bundle", "/offline/token", "/offline/deliver");

    private static final String[] OPEN = {
        "/sign-in",
        "/welcome",
        "/error",
        "/app.css",
        "/app.js",
        "/app-*.css",
        "/app-*.js",
        "/icon*",
        "/favicon.ico",
        // what works without a network holds nothing of anybody's
        "/offline",
        "/service-worker.js",
        "/manifest.webmanifest",
        "/stopwatch-*.js",
        "/webjars/**",
        "/actuator/health",
        "/actuator/health/**",
        // a secret stands in each of these addresses
        "/calendar/*",
        "/notices/confirm/*",
        STOP
    };

    @Bean
    PasswordEncoder passwordEncoder() {
        return PasswordEncoderFactories.createDelegatingPasswordEncoder();
    }

    /** Text with a NUL in it was typed by nobody and can be kept by no database; it is answered with 400. */
    @Bean
    StrictHttpFirewall plainText() {
        StrictHttpFirewall firewall = new StrictHttpFirewall();
        // a name without a value has null for it
        firewall.setAllowedParameterValues(value -> value == null || value.indexOf('\0') < 0);
        return firewall;
    }

    @Bean
    UserDetailsService signInNames(AccountRepository accounts) {
        return name -> accounts.findBySignInNameIgnoreCase(name.strip())
                .map(Account::toSignedIn)
                .orElseThrow(() -> new UsernameNotFoundException("nobody has this name"));
    }

    @Bean
    @Order(1)
    SecurityFilterChain letProgramsIn(HttpSecurity http, BearerTokens bearerTokens) {
        return http.securityMatcher("/api/**")
                .csrf(csrf -> csrf.disable())
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .requestCache(cache -> cache.disable())
                .addFilterBefore(bearerTokens, UsernamePasswordAuthenticationFilter.class)
                .exceptionHandling(refuse -> refuse.authenticationEntryPoint(BearerTokens::refuse))
                .authorizeHttpRequests(ask -> ask.requestMatchers("/api/v1/openapi.json")
                        .permitAll()
                        .anyRequest()
                        .authenticated())
                .headers(headers -> headers.contentSecurityPolicy(
                        policy -> policy.policyDirectives("default-src 'none'; frame-ancestors 'none'")))
                .build();
    }

    @Bean
    @Order(2)
    SecurityFilterChain letPeopleIn(HttpSecurity http, People people, SignInThrottle throttle, StyleSheet sheet) {
        SimpleUrlAuthenticationFailureHandler wrong = new SimpleUrlAuthenticationFailureHandler("/sign-in?wrong");
        return http.addFilterBefore(new FirstOwnerFilter(people), UsernamePasswordAuthenticationFilter.class)
                .addFilterBefore(new ThrottleFilter(throttle), UsernamePasswordAuthenticationFilter.class)
                .authorizeHttpRequests(ask ->
                        ask.requestMatchers(OPEN).permitAll().anyRequest().authenticated())
                // a mail program stops mail by one bare request (RFC 8058)
                .csrf(csrf -> csrf.ignoringRequestMatchers(STOP))
                // a script has to be told that nobody is signed in; a page is sent to sign in
                .exceptionHandling(refuse -> refuse.authenticationEntryPoint((request, response, failure) ->
                        (FOR_SCRIPTS.contains(path(request)) ? SCRIPTS_WAIT : PEOPLE_SIGN_IN)
                                .commence(request, response, failure)))
                .formLogin(form -> form.loginPage("/sign-in")
                        .usernameParameter("signInName")
                        .successHandler(new SignInSucceeded(throttle))
                        .failureHandler((request, response, failure) -> {
                            throttle.wrong(name(request), request.getRemoteAddr());
                            wrong.onAuthenticationFailure(request, response, failure);
                        }))
                .logout(out -> out.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?out"))
                .headers(headers -> headers.contentSecurityPolicy(
                                policy -> policy.policyDirectives(CONTENT_POLICY.formatted(sheet.source())))
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                        .permissionsPolicyHeader(
                                policy -> policy.policy("camera=(self), microphone=(), geolocation=()")))
                .build();
    }

    static String name(HttpServletRequest request) {
        String name = request.getParameter("signInName");
        return name == null ? "" : name;
    }

    private static String path(HttpServletRequest request) {
        return request.getRequestURI().substring(request.getContextPath().length());
    }

    /** Turns a sign-in away unread while its name or address has to wait. */
    private static final class ThrottleFilter extends OncePerRequestFilter {

        private final SignInThrottle throttle;

        ThrottleFilter(SignInThrottle throttle) {
            this.throttle = throttle;
        }

        @Override
        protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
                throws ServletException, IOException {
            boolean signingIn = "POST".equals(request.getMethod()) && "/sign-in".equals(path(request));
            if (signingIn && throttle.mustWait(name(request), request.getRemoteAddr())) {
                response.sendRedirect(request.getContextPath() + "/sign-in?wait");
                return;
            }
            chain.doFilter(request, response);
        }
    }

    /** Sends everybody to the owner's page while the install is empty. */
    private static final class FirstOwnerFilter extends OncePerRequestFilter {

        private final People people;
        private volatile boolean settled;

        FirstOwnerFilter(People people) {
            this.people = people;
        }

        @Override
        protected boolean shouldNotFilter(HttpServletRequest request) {
            String path = path(request);
            return settled
                    || path.equals("/welcome")
                    || path.startsWith("/app")
                    || path.startsWith("/webjars/")
                    || path.startsWith("/actuator/")
                    || path.startsWith("/icon")
                    || path.equals("/error");
        }

        @Override
        protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
                throws ServletException, IOException {
            if (people.anyone()) {
                settled = true;
                chain.doFilter(request, response);
            } else {
                response.sendRedirect(request.getContextPath() + "/welcome");
            }
        }
    }
}

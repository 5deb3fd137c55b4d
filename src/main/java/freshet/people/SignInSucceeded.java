package freshet.people;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.SavedRequestAwareAuthenticationSuccessHandler;

/** Takes a person to the page asked for, and clears the wrong tries of the name. */
final class SignInSucceeded extends SavedRequestAwareAuthenticationSuccessHandler {

    private final SignInThrottle throttle;

    SignInSucceeded(SignInThrottle throttle) {
        this.throttle = throttle;
    }

    @Override
    public void onAuthenticationSuccess(
            HttpServletRequest request, HttpServletResponse response, Authentication authentication)
            throws ServletException, IOException {
        throttle.right(authentication.getName());
        super.onAuthenticationSuccess(request, response, authentication);
    }
}

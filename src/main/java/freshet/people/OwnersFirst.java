package freshet.people;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.authorization.AuthorizationResult;
import org.springframework.security.authorization.method.PreAuthorizeAuthorizationManager;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.util.SimpleMethodInvocation;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Asks who may before a form is read: nobody learns from its errors what an address that is not theirs wants to have. */
@Configuration(proxyBeanMethods = false)
class OwnersFirst implements WebMvcConfigurer, HandlerInterceptor {

    private final PreAuthorizeAuthorizationManager said = new PreAuthorizeAuthorizationManager();

    @Override
    public void addInterceptors(InterceptorRegistry interceptors) {
        interceptors.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method) {
            AuthorizationResult may = said.authorize(
                    () -> SecurityContextHolder.getContext().getAuthentication(),
                    new SimpleMethodInvocation(method.getBean(), method.getMethod()));
            if (may != null && !may.isGranted()) {
                throw new AccessDeniedException("only an owner may");
            }
        }
        return true;
    }
}

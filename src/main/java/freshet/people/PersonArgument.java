package freshet.people;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.MethodParameter;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Gives any controller method that asks for a {@link Person} the one who is signed in, as the database knows them now. */
@Configuration(proxyBeanMethods = false)
class PersonArgument implements WebMvcConfigurer, HandlerMethodArgumentResolver {

    private static final String KNOWN = PersonArgument.class.getName();

    private final People people;

    PersonArgument(People people) {
        this.people = people;
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Person.class;
    }

    @Override
    public Object resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest request,
            @Nullable WebDataBinderFactory binders) {
        Person person = signedIn(request);
        if (person == null) {
            throw new NotAllowed("nobody is signed in");
        }
        return person;
    }

    /** The person of this request, read once; nobody when not signed in or no longer active. */
    @Nullable
    Person signedIn(RequestAttributes request) {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        if (authentication == null || !(authentication.getPrincipal() instanceof SignedIn principal)) {
            return null;
        }
        Person known = (Person) request.getAttribute(KNOWN, RequestAttributes.SCOPE_REQUEST);
        if (known == null) {
            known = people.person(principal.id());
            request.setAttribute(KNOWN, known, RequestAttributes.SCOPE_REQUEST);
        }
        return known.active() ? known : null;
    }
}

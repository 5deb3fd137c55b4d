package freshet.people;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Collections;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.servlet.LocaleResolver;

/** Answers in the language that the person chose; before somebody signed in, in the first of ours that the browser asks for. */
@Configuration(proxyBeanMethods = false)
class ReadersLanguage {

    @Bean
    LocaleResolver localeResolver(PersonArgument persons) {
        return new LocaleResolver() {

            @Override
            public Locale resolveLocale(HttpServletRequest request) {
                Person reader = persons.signedIn(new ServletRequestAttributes(request));
                return reader == null ? asked(request) : reader.locale();
            }

            @Override
            public void setLocale(
                    HttpServletRequest request, @Nullable HttpServletResponse response, @Nullable Locale to) {
                throw new UnsupportedOperationException("the language is chosen on the account's page");
            }
        };
    }

    static Locale asked(HttpServletRequest request) {
        return Collections.list(request.getLocales()).stream()
                .filter(locale -> locale.getLanguage().equals("en")
                        || locale.getLanguage().equals("es"))
                .findFirst()
                .map(Language::of)
                .orElse(Language.EN)
                .locale();
    }
}

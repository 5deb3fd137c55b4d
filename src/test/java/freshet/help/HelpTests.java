package freshet.help;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.http.HttpMethod;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** Every page has its help, and every help says something in both languages. */
@FreshetTest
class HelpTests {

    @Autowired
    RequestMappingHandlerMapping requestMappingHandlerMapping;

    @Autowired
    MessageSource messages;

    @Test
    void hasATopicForEveryPage() {
        List<String> without = new ArrayList<>();
        requestMappingHandlerMapping.getHandlerMethods().forEach((info, handler) -> {
            if (isPage(info, handler)) {
                info.getPatternValues().stream()
                        .filter(path -> !path.startsWith("/help"))
                        .map(path -> path.replaceAll("\\{[^}]*}", "1"))
                        .filter(path -> Topic.of(path).isEmpty())
                        .forEach(without::add);
            }
        });
        assertThat(without).isEmpty();
    }

    private static boolean isPage(RequestMappingInfo info, HandlerMethod handler) {
        Method method = handler.getMethod();
        return info.getMethodsCondition().getMethods().stream().anyMatch(each -> each.asHttpMethod() == HttpMethod.GET)
                && method.getReturnType() == String.class
                && handler.getBeanType().getPackageName().startsWith("freshet")
                && !AnnotatedElementUtils.hasAnnotation(method, ResponseBody.class)
                && !AnnotatedElementUtils.hasAnnotation(handler.getBeanType(), ResponseBody.class);
    }

    @Test
    void saysWhatEachPageIsForAndHowInBothLanguages() {
        for (Locale locale : List.of(Locale.ENGLISH, new Locale("es", "US"))) {
            for (Topic topic : Topic.values()) {
                for (String part : List.of("", ".what", ".1", ".2")) {
                    String said = messages.getMessage("help." + topic.word() + part, null, null, locale);
                    assertThat(said).as("%s %s %s", locale, topic, part).isNotBlank();
                }
            }
        }
    }

    @Test
    void sendsTheMoreParticularPageToItsOwnHelp() {
        assertThat(Topic.of("/pumps/7")).contains(Topic.UNIT);
        assertThat(Topic.of("/pumps/7/flow-test")).contains(Topic.FLOW_TEST);
        assertThat(Topic.of("/pumps/models")).contains(Topic.MODELS);
        assertThat(Topic.of("/jobs/pump-or-line")).contains(Topic.PUMP_OR_LINE);
        assertThat(Topic.of("/season/hands")).contains(Topic.HANDS);
        assertThat(Topic.of("/nowhere")).isEmpty();
    }
}

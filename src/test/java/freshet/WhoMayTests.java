package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.care.CareYard;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** Who may send what: an owner's address turns a technician away before it looks at what was sent. */
@FreshetTest
class WhoMayTests {

    private static final List<String> ONLY_OWNERS =
            """
            /checklists/new
            /checklists/{id}/edit
            /hires/emergency-line
            /import
            /import/preview
            /notices/mail/try
            /people/new
            /people/{id}
            /places/customers/new
            /places/customers/{id}/edit
            /places/positions/{id}/edit
            /places/sites/new
            /places/sites/{id}/edit
            /places/sites/{siteId}/positions/new
            /pumps/models/new
            /pumps/models/{id}/edit
            /pumps/new
            /pumps/{id}/bring-back
            /pumps/{id}/edit
            /pumps/{id}/kit
            /pumps/{id}/move
            /pumps/{id}/retire
            /rules/new
            /rules/{id}
            /rules/{id}/rest
            /rules/{id}/wake
            /timetable/{room}/{name}
            /welcome
            """.lines().map(String::strip).toList();

    private static final List<String> TECHNICIANS_TOO =
            """
            /account/password
            /account/tokens
            /account/tokens/{id}/revoke
            /account/units
            /findings/{id}
            /findings/{id}/judge
            /findings/{id}/photos
            /findings/{id}/photos/{hung}/down
            /findings/{id}/put-off
            /flow-tests/{id}/withdraw
            /happenings/new
            /happenings/{id}
            /hires/turn-away
            /hires/{id}/extend
            /hires/{id}/photos
            /hires/{id}/return
            /hires/{id}/swap
            /notices
            /notices/address
            /notices/address/forget
            /notices/calendars
            /notices/calendars/{siteId}/take-back
            /notices/confirm/{secret}
            /notices/stop/{secret}
            /offline/conflicts/{id}
            /offline/deliver
            /pumps/{id}/finding
            /pumps/{id}/flow-test
            /pumps/{id}/issue
            /pumps/{id}/meter-swap
            /pumps/{id}/photos
            /pumps/{id}/photos/{hung}/down
            /pumps/{id}/reading
            /pumps/{id}/readings/{reading}/withdraw
            /pumps/{id}/tag-out
            /records/{id}
            /records/{id}/correct
            /repairs/new
            /repairs/{id}/done
            /repairs/{id}/give-up
            /repairs/{id}/plan
            /rounds/access/{siteId}
            /rounds/new
            /rounds/{id}/edit
            /rounds/{id}/give-up
            /rounds/{id}/stops
            /rounds/{id}/stops/{stopId}/no-access
            /rounds/{id}/stops/{stopId}/seen
            /season/hands
            /season/hands/{personId}
            /season/work
            /tasks/{id}
            /tasks/{id}/photos
            """.lines().map(String::strip).toList();

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping addresses;

    Pages technician;

    @BeforeEach
    void technician() {
        yard.teo();
        technician = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    @Test
    void turnsTechniciansAwayBeforeAFormIsReadAndKnowsOfEachFormWhoMay() {
        Set<String> onlyOwners = new TreeSet<>();
        Set<String> techniciansToo = new TreeSet<>();
        addresses.getHandlerMethods().keySet().stream()
                .filter(mapping -> mapping.getMethodsCondition().getMethods().contains(RequestMethod.POST))
                .flatMap(mapping -> mapping.getPatternValues().stream())
                .forEach(address -> {
                    boolean refused = technician
                                    .submit(address.replaceAll("\\{[^}]*}", "999999"))
                                    .status()
                            == 403;
                    (refused ? onlyOwners : techniciansToo).add(address);
                });
        assertThat(onlyOwners).containsExactlyElementsOf(ONLY_OWNERS);
        assertThat(techniciansToo).containsExactlyElementsOf(TECHNICIANS_TOO);
    }
}

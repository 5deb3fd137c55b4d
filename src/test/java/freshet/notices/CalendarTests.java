package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.head;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.SiteDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** The calendar as a program gets it, read by another parser than the library that wrote it. */
@FreshetTest
class CalendarTests {

    @Autowired
    Notices notices;

    @Autowired
    CareYard yard;

    @Autowired
    Care care;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    People people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvc mvc;

    @Autowired
    TestClock clock;

    Person teo;
    Site wharf;
    Unit unit;
    String secret;

    @BeforeEach
    void aWharfWhereWinterPassesTheNewYear() {
        clock.set("2026-09-14T15:00:00Z");
        teo = yard.teo();
        wharf = yard.site(
                "Kauri Wharf, north",
                ZoneId.of("Pacific/Auckland"),
                CareYard.closing("Lay up", 11, 15, 3, 31),
                CareYard.opening("Open; first", 9, 1, 9, 30));
        unit = yard.unit("KW-1", PumpKind.UTILITY_SUBMERSIBLE, wharf.id(), LocalDate.of(2026, 8, 1));
        secret = notices.makeCalendar(teo, wharf.id());
    }

    private MockHttpServletResponse answer(MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request).andReturn().getResponse();
    }

    private MockHttpServletResponse fetch() throws Exception {
        return answer(get("/calendar/" + secret + ".ics"));
    }

    private List<VEvent> events() throws Exception {
        ICalendar calendar = Biweekly.parse(fetch().getContentAsString(StandardCharsets.UTF_8))
                .first();
        // the zone that an empty calendar consists of is no component to this parser
        if (!calendar.getEvents().isEmpty()) {
            assertThat(calendar.validate(ICalVersion.V2_0).isEmpty())
                    .as(() -> calendar.validate(ICalVersion.V2_0).toString())
                    .isTrue();
        }
        return calendar.getEvents();
    }

    private VEvent event(String summary) throws Exception {
        return events().stream()
                .filter(each -> each.getSummary().getValue().equals(summary))
                .findFirst()
                .orElseThrow();
    }

    private static String day(biweekly.property.DateOrDateTimeProperty property) {
        assertThat(property.getValue().hasTime()).isFalse();
        return property.getValue().getRawComponents().toString(false, false);
    }

    private Task open(String title) {
        return care.openTasksAt(Set.of(wharf.id())).stream()
                .filter(task -> task.title().equals(title))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void showsAllOpenWorkOfThePlaceOnItsDaysWithoutSigningIn() throws Exception {
        MockHttpServletResponse answer = fetch();
        assertThat(answer.getStatus()).isEqualTo(200);
        assertThat(answer.getContentType()).isEqualToIgnoringCase("text/calendar;charset=UTF-8");
        assertThat(answer.getHeader("Cache-Control")).isEqualTo("no-cache, private");

        assertThat(events())
                .extracting(
                        each -> each.getSummary().getValue(),
                        each -> day(each.getDateStart()),
                        each -> day(each.getDateEnd()))
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("KW-1 Opening 2026", "20260901", "20261001"),
                        org.assertj.core.groups.Tuple.tuple("KW-1 Closing 2026/27", "20261115", "20270401"),
                        org.assertj.core.groups.Tuple.tuple("KW-1 Opening 2027", "20270901", "20271001"));
        VEvent opening = event("KW-1 Opening 2026");
        assertThat(opening.getLocation().getValue()).isEqualTo("Kauri Wharf, north");
        assertThat(opening.getDescription().getValue().replace('\u00a0', ' '))
                .isEqualTo("Open; first, 1 Sep to 30 Sep.\nAbout 35 min of work.\nhttp://localhost:0/tasks/"
                        + open("Opening 2026").id());
        assertThat(opening.getUrl().getValue())
                .isEqualTo("http://localhost:0/tasks/" + open("Opening 2026").id());
        assertThat(opening.getTransparency().isTransparent()).isTrue();
        assertThat(opening.getDateTimeStamp().getValue()).isEqualTo("2026-09-14T15:00:00Z");
    }

    @Test
    void keepsItsNamesAndGrowsTheSequenceOfWhatChanged() throws Exception {
        VEvent opening = event("KW-1 Opening 2026");
        VEvent closing = event("KW-1 Closing 2026/27");
        assertThat(opening.getSequence().getValue()).isZero();

        clock.advance(Duration.ofHours(3));
        Site its = places.site(wharf.id());
        places.changeSite(
                its.id(),
                its.version(),
                new SiteDraft(
                        its.name(),
                        its.zone(),
                        null,
                        null,
                        List.of(CareYard.closing("Lay up", 11, 15, 3, 31), moved(its))),
                yard.ilse());

        VEvent later = event("KW-1 Opening 2026");
        assertThat(later.getUid()).isEqualTo(opening.getUid());
        assertThat(later.getSequence().getValue()).isEqualTo(1);
        assertThat(day(later.getDateEnd())).isEqualTo("20261006");
        assertThat(later.getLastModified().getValue()).isEqualTo("2026-09-14T18:00:00Z");
        assertThat(later.getDateTimeStamp().getValue()).isEqualTo("2026-09-14T18:00:00Z");
        assertThat(events()).extracting(VEvent::getUid).doesNotHaveDuplicates();
        assertThat(closing.getUid()).isNotEqualTo(opening.getUid());

        // another address of the same place tells of the same events
        secret = notices.makeCalendar(yard.ilse(), wharf.id());
        assertThat(event("KW-1 Opening 2026").getUid()).isEqualTo(opening.getUid());
        assertThat(event("KW-1 Opening 2026").getSequence().getValue()).isEqualTo(1);
    }

    /** The opening window with the same id, five days longer. */
    private static freshet.places.WindowDraft moved(Site site) {
        var window = site.windows().stream()
                .filter(each -> each.name().startsWith("Open"))
                .findFirst()
                .orElseThrow();
        return new freshet.places.WindowDraft(
                window.id(), window.kind(), window.name(), window.from(), java.time.MonthDay.of(10, 5));
    }

    @Test
    void losesWhatIsSignedOrWithdrawn() throws Exception {
        Task opening = open("Opening 2026");
        care.sign(
                opening.id(),
                SignOff.of(opening.version(), CareYard.allPass(care.worksheet(opening.id()), yard.ilse())),
                yard.ilse());
        assertThat(events())
                .extracting(each -> each.getSummary().getValue())
                .containsExactlyInAnyOrder("KW-1 Closing 2026/27", "KW-1 Opening 2027");

        Unit now = pumps.unit(unit.id());
        pumps.retire(now.id(), now.version(), LocalDate.of(2026, 9, 15), "Worn out", yard.ilse());
        assertThat(events()).isEmpty();
        assertThat(fetch().getContentAsString()).contains("BEGIN:VTIMEZONE");
    }

    @Test
    void tellsWhoHasItAlreadyThatNothingChanged() throws Exception {
        MockHttpServletResponse first = fetch();
        String tag = first.getHeader("ETag");
        String modified = first.getHeader("Last-Modified");
        assertThat(tag).matches("\"[0-9a-f]{64}\"");
        assertThat(modified).isEqualTo("Mon, 14 Sep 2026 15:00:00 GMT");

        clock.advance(Duration.ofDays(2));
        MockHttpServletResponse again =
                answer(get("/calendar/" + secret + ".ics").header("If-None-Match", tag));
        assertThat(again.getStatus()).isEqualTo(304);
        assertThat(again.getContentAsByteArray()).isEmpty();
        assertThat(answer(get("/calendar/" + secret + ".ics").header("If-Modified-Since", modified))
                        .getStatus())
                .isEqualTo(304);
        assertThat(answer(head("/calendar/" + secret + ".ics")).getStatus()).isEqualTo(200);

        // less is a change too
        Unit now = pumps.unit(unit.id());
        pumps.retire(now.id(), now.version(), LocalDate.of(2026, 9, 16), "Worn out", yard.ilse());
        MockHttpServletResponse less = answer(
                get("/calendar/" + secret + ".ics").header("If-None-Match", tag).header("If-Modified-Since", modified));
        assertThat(less.getStatus()).isEqualTo(200);
        assertThat(less.getHeader("ETag")).isNotEqualTo(tag);
        assertThat(less.getHeader("Last-Modified")).isEqualTo("Wed, 16 Sep 2026 15:00:00 GMT");
    }

    @Test
    void isNotThereForAWrongARevokedOrARenewedSecretNorForWhomMayNotSignIn() throws Exception {
        String old = secret;
        assertThat(jdbc.sql("select digest from calendar_feed")
                        .query(String.class)
                        .single())
                .as("only its digest is kept")
                .isEqualTo(Secrets.digest(old));
        assertThat(answer(get("/calendar/" + "x".repeat(43) + ".ics")).getStatus())
                .isEqualTo(404);
        assertThat(answer(get("/calendar/" + old)).getStatus()).isEqualTo(404);

        secret = notices.makeCalendar(teo, wharf.id());
        assertThat(answer(get("/calendar/" + old + ".ics")).getStatus()).isEqualTo(404);
        assertThat(fetch().getStatus()).isEqualTo(200);

        people.changePerson(teo.id(), teo.version(), teo.fullName(), teo.role(), Set.of(), false, null, yard.ilse());
        assertThat(fetch().getStatus()).isEqualTo(404);
        teo = people.person(teo.id());
        people.changePerson(teo.id(), teo.version(), teo.fullName(), teo.role(), Set.of(), true, null, yard.ilse());
        assertThat(fetch().getStatus()).isEqualTo(200);

        notices.takeBackCalendar(teo, wharf.id());
        assertThat(fetch().getStatus()).isEqualTo(404);
        assertThat(notices.calendars(teo.id())).isEmpty();
    }
}

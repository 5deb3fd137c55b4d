package freshet.happenings;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class HappeningPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Happenings happenings;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Pages teos;
    Site dyer;
    Site lisbon;
    Unit unit;
    long pit;

    @BeforeEach
    void twoPlacesInTwoZones() {
        clock.set("2026-03-26T20:00:30Z");
        yard.teo();
        dyer = yard.site("Dyer Court", CareYard.CHICAGO);
        lisbon = yard.site("Faro Yard", ZoneId.of("Europe/Lisbon"));
        pit = places.addPosition(new PositionDraft(dyer.id(), "North pit", PositionKind.PIT, null), yard.ilse())
                .id();
        unit = yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, dyer.id(), CareYard.LONG_AGO);
        pumps.move(
                unit.id(),
                new Whereabouts(dyer.id(), pit, null),
                Instant.parse("2026-03-01T12:00:00Z"),
                null,
                yard.ilse());
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    @Test
    void reportAStormAtSeveralPlacesByTheClockOfEach() {
        Page blank = teos.open("/happenings/new");
        assertThat(blank.html().select("[name=where]").eachAttr("value"))
                .containsExactly("site:" + dyer.id(), "site:" + lisbon.id());
        Page kept = teos.submit(
                "/happenings/new",
                "kind",
                "STORM",
                "where",
                "site:" + dyer.id(),
                "where",
                "site:" + lisbon.id(),
                "at",
                "2026-03-26T03:00",
                "note",
                "Gauge 3.1 in");
        assertThat(kept.location()).isEqualTo("/happenings");
        assertThat(happenings.recent(null, true, 0, 9))
                .extracting(Happening::siteName, Happening::at)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("Dyer Court", Instant.parse("2026-03-26T08:00:00Z")),
                        org.assertj.core.groups.Tuple.tuple("Faro Yard", Instant.parse("2026-03-26T03:00:00Z")));
        assertThat(teos.open("/happenings").text()).contains("Storm Dyer Court", "Gauge 3.1 in", "Faro Yard");
        assertThat(teos.open("/pumps/" + unit.id()).text(".past")).contains("Storm", "Gauge 3.1 in");
    }

    @Test
    void offerThePumpItsPitAndItsPlaceFromThePumpsPage() {
        Page blank = teos.open("/happenings/new?unit=" + unit.id());
        assertThat(blank.html().select("[name=where]").eachAttr("value"))
                .containsExactly("unit:" + unit.id(), "position:" + pit, "site:" + dyer.id());
        assertThat(blank.html().select("[name=where][checked]").eachAttr("value"))
                .containsExactly("unit:" + unit.id());
        Page kept =
                teos.submit("/happenings/new", "unit", "" + unit.id(), "kind", "DRY_RUN", "where", "position:" + pit);
        assertThat(teos.open(String.valueOf(kept.location())).text("main"))
                .contains("Ran dry", "Dyer Court, North pit", "26 Mar 2026, 15:00", "Teo Brandt", "QM-104");
        assertThat(teos.open("/happenings/new?site=" + dyer.id())
                        .html()
                        .select("[name=where]")
                        .eachAttr("value"))
                .containsExactly("site:" + dyer.id(), "position:" + pit);
        teos.submit("/happenings/new", "kind", "POWER_FAILURE", "everywhere", "true");
        teos.submit("/happenings/new", "kind", "SALT_USE", "tag", "qm-104");
        assertThat(happenings.ofUnit(unit.id()))
                .extracting(Happening::kind)
                .containsExactlyInAnyOrder(HappeningKind.DRY_RUN, HappeningKind.POWER_FAILURE, HappeningKind.SALT_USE);
        assertThat(happenings.count(null, false)).isEqualTo(4);
    }

    @Test
    void keepWhatWasTypedWhenSomethingIsWrong() {
        Page empty = teos.submit("/happenings/new", "note", "Wet");
        assertThat(empty.status()).isEqualTo(422);
        assertThat(empty.wrong("kind")).isEqualTo("Choose what happened.");
        assertThat(empty.wrong("where")).isEqualTo("Tick a place, or give a tag.");
        assertThat(empty.value("note")).isEqualTo("Wet");
        Page future =
                teos.submit("/happenings/new", "kind", "STORM", "where", "site:" + dyer.id(), "at", "2026-03-26T15:30");
        assertThat(future.wrong("at")).isEqualTo("This is in the future.");
        assertThat(future.html().select("[name=where][checked]").eachAttr("value"))
                .isEqualTo(List.of("site:" + dyer.id()));
        Page unknown = teos.submit("/happenings/new", "kind", "STORM", "tag", "QM-999");
        assertThat(unknown.wrong("tag")).isEqualTo("No pump has the tag \"QM-999\".");
        // a hire is not reported by hand
        Page hire = teos.submit("/happenings/new", "kind", "HIRE_RETURN", "tag", "QM-104");
        assertThat(hire.wrong("kind")).isEqualTo("Choose what happened.");
        assertThat(happenings.count(null, false)).isZero();
    }

    @Test
    void takeAWrongReportBackButNotAHire() {
        teos.submit("/happenings/new", "kind", "STORM", "where", "site:" + dyer.id());
        String address =
                "/happenings/" + happenings.recent(null, true, 0, 1).get(0).id();
        assertThat(teos.submit(address, "why", " ").wrong("why")).startsWith("Say in words");
        assertThat(teos.submit(address, "why", "It passed by").location()).isEqualTo(address);
        assertThat(teos.open(address).text(".warn")).contains("Taken back by Teo Brandt", "It passed by");
        assertThat(teos.submit(address, "why", "Again").status()).isEqualTo(409);
        assertThat(teos.open("/happenings").text()).contains("Taken back by Teo Brandt");

        HappeningDraft back = HappeningDraft.toUnit(HappeningKind.HIRE_RETURN, clock.instant(), unit.id(), null);
        String hire = "/happenings/" + happenings.report(back, yard.ilse());
        assertThat(teos.open(hire).html().select("main form")).isEmpty();
        assertThat(teos.submit(hire, "why", "No").status()).isEqualTo(422);
        assertThat(teos.open("/happenings/999999").status()).isEqualTo(404);
    }
}

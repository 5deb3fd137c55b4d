package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class WrongFilesTests {

    @Autowired
    Exchange exchange;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    Person me;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-20T18:00:00Z");
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
    }

    private static NamedFile file(String name, String... lines) {
        return new NamedFile(name, String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }

    /** Every problem as "file:line:column:code". */
    private List<String> problems(NamedFile... files) {
        Preview preview = exchange.preview(List.of(files), me);
        assertThatThrownBy(() -> exchange.takeIn(List.of(files), me))
                .isInstanceOfSatisfying(
                        ImportRefused.class,
                        refused -> assertThat(refused.preview()).isEqualTo(preview));
        assertThat(preview.problems())
                .allSatisfy(problem ->
                        assertThat(problem.code()).matches("(exchange|places|pumps|readings|measures)\\..*"));
        return preview.problems().stream()
                .map(problem -> problem.file() + ":" + problem.line() + ":" + problem.column() + ":" + problem.code())
                .toList();
    }

    private static final String MODEL_HEADING =
            "model,pump kind,drive,flow 1 (gpm),head 1 (ft),flow 2 (gpm),head 2 (ft)";
    private static final NamedFile MODELS =
            file("models.csv", MODEL_HEADING, "Utility,utility submersible,single phase,0,25,42,0");
    private static final NamedFile SITES = file("sites.csv", "site,time zone", "Yard,America/Chicago");
    private static final NamedFile POSITIONS =
            file("positions.csv", "site,position,position kind", "Yard,North pit,pit");
    private static final String UNIT_HEADING = "tag,serial,model,site,position,customer,in care from";

    private void aYard() {
        exchange.takeIn(
                List.of(SITES, POSITIONS, MODELS, file("units.csv", UNIT_HEADING, "P-01,A1,Utility,Yard,,,2024-03-01")),
                me);
    }

    private static NamedFile models(String row) {
        return file("models.csv", MODEL_HEADING, row);
    }

    @Test
    void takesTheRatedSpeedOfAModelInAndHandsItOut() {
        String heading = MODEL_HEADING + ",rated speed (rpm)";
        assertThat(problems(file("models.csv", heading, "Trash,engine trash,engine,0,90,300,0,fast")))
                .containsExactly("models.csv:2:rated speed:measures.notANumber");
        exchange.takeIn(List.of(file("models.csv", heading, "Trash,engine trash,engine,0,90,300,0,3600")), me);

        assertThat(pumps.modelNamed("Trash").orElseThrow().ratings().speedRpm()).isEqualTo(3600);
        assertThat(new String(exchange.export(FileKind.MODELS, me), StandardCharsets.UTF_8))
                .contains("rated speed (rpm)", "3600");
    }

    @Test
    void saysWhyAFileCannotBeRead() {
        assertThat(problems(new NamedFile("none.csv", new byte[0])))
                .containsExactly("none.csv:null:null:exchange.file.empty");
        assertThat(problems(file("blank.csv", "", " , ,", "")))
                .containsExactly("blank.csv:null:null:exchange.file.empty");
        assertThat(problems(new NamedFile("book.xlsx", new byte[] {'P', 'K', 3, 4, 20, 0})))
                .containsExactly("book.xlsx:null:null:exchange.file.workbook");
        assertThat(problems(new NamedFile("photo.csv", new byte[] {(byte) 0x89, 'P', 'N', 'G', 0, 1})))
                .containsExactly("photo.csv:null:null:exchange.file.binary");
        assertThat(problems(new NamedFile("wide.csv", "site,time zone".getBytes(StandardCharsets.UTF_16))))
                .containsExactly("wide.csv:null:null:exchange.file.binary");
        assertThat(problems(new NamedFile(
                        "old.csv", "customer\nPlain\nCaf\u00e9\n".getBytes(Charset.forName("windows-1252")))))
                .containsExactly("old.csv:3:null:exchange.file.encoding");
        assertThat(problems(new NamedFile("large.csv", new byte[Exchange.LARGEST_FILE_BYTES + 1])))
                .containsExactly("large.csv:null:null:exchange.file.large");
        assertThat(problems(file("quote.csv", "customer", "Fine", "\"Never closed", "Other")))
                .containsExactly("quote.csv:3:null:exchange.file.quotes");
    }

    @Test
    void saysWhatIsWrongWithAHeading() {
        assertThat(problems(file("a.csv", "colour,taste", "red,sweet")))
                .containsExactly("a.csv:1:null:exchange.heading.noKind");
        assertThat(problems(file("a.csv", "", "tag,model,site,mood,in care from", "P,M,S,x,2024-01-01")))
                .containsExactly("a.csv:2:mood:exchange.heading.unknown");
        assertThat(problems(file("a.csv", "tag,site,position,spot,in care from")))
                .containsExactly("a.csv:1:model:exchange.heading.missing");
        assertThat(problems(file("a.csv", "customer,phone,Phone", "A,1,2")))
                .containsExactly("a.csv:1:Phone:exchange.heading.twice");
        assertThat(problems(file("a.csv", "model,pump kind,drive,power (gpm)")))
                .containsExactly("a.csv:1:power (gpm):exchange.heading.unit");
        assertThat(problems(file("a.csv", "customer,note", "A,b,c")))
                .containsExactly("a.csv:2:null:exchange.tooManyCells");
        assertThat(problems(file("a.csv", "customer,,note", "A,b,c")))
                .containsExactly("a.csv:2:null:exchange.noHeading");
        assertThat(problems(models("Shift,sewage,single phase,0,25,42,0,5")))
                .containsExactly("models.csv:2:null:exchange.tooManyCells");
    }

    @Test
    void readsEitherDelimiterEitherLineEndAndAMark() {
        byte[] file =
                "\ufeffCustomer;PHONE;note\r\n\"Weir; Bakery\";555;\"two\r\nlines, \"\"quoted\"\"\"\r\n\r\n\u00c5se;;\r\n"
                        .getBytes(StandardCharsets.UTF_8);
        Preview done = exchange.takeIn(List.of(new NamedFile("c.csv", file)), me);

        assertThat(done.added()).isEqualTo(2);
        assertThat(places.customerNamed("weir; bakery")).get().satisfies(bakery -> {
            assertThat(bakery.phone()).isEqualTo("555");
            assertThat(bakery.note()).isEqualTo("two\r\nlines, \"quoted\"");
        });
        assertThat(places.customerNamed("\u00c5se")).isPresent();
    }

    @Test
    void findsATagTwiceInTheFilesAndATagOfAnotherUnit() {
        aYard();
        assertThat(problems(
                        file(
                                "one.csv",
                                UNIT_HEADING,
                                "P-02,,Utility,Yard,,,2024-03-01",
                                "p-02,,Utility,Yard,,,2024-03-01"),
                        file("two.csv", UNIT_HEADING, "P-02,,Utility,Yard,,,2024-03-01")))
                .containsExactly("one.csv:3:null:exchange.twice", "two.csv:2:null:exchange.twice");
        assertThat(problems(file("units.csv", UNIT_HEADING, "p-01,B2,Utility,Yard,,,2024-03-01")))
                .containsExactly("units.csv:2:tag:exchange.tag.otherUnit");
        var unit = pumps.unitTagged("P-01").orElseThrow();
        pumps.retire(unit.id(), unit.version(), java.time.LocalDate.of(2026, 3, 1), "cracked", me);
        assertThat(problems(file("units.csv", UNIT_HEADING, "P-01,A1,Utility,Yard,,,2024-03-01")))
                .containsExactly("units.csv:2:tag:pumps.rowRetired");
    }

    @Test
    void namesWhatIsUnknownAtItsLine() {
        aYard();
        assertThat(problems(
                        file(
                                "units.csv",
                                UNIT_HEADING,
                                "P-02,,Nothing,Nowhere,,Nobody,2024-03-01",
                                "P-03,,Utility,Yard,Hole,,2024-03-01"),
                        file("sites.csv", "site,time zone,customer", "Other,Mars/Olympus,Nobody"),
                        file("positions.csv", "site,position,position kind", "Nowhere,Pit,hole"),
                        file("kit.csv", "tag,piece,description", "P-99,hose,Hose"),
                        file("readings.csv", "tag,meter,read at,value", "P-99,run hours,2026-03-01 08:00,4")))
                .containsExactly(
                        "sites.csv:2:customer:exchange.unknown.CUSTOMERS",
                        "sites.csv:2:time zone:places.zone.unknown",
                        "positions.csv:2:site:exchange.unknown.SITES",
                        "positions.csv:2:position kind:exchange.choice",
                        "units.csv:2:model:exchange.unknown.MODELS",
                        "units.csv:2:customer:exchange.unknown.CUSTOMERS",
                        "units.csv:2:site:exchange.unknown.SITES",
                        "units.csv:3:position:exchange.unknown.POSITIONS",
                        "kit.csv:2:tag:exchange.unknown.UNITS",
                        "readings.csv:2:tag:exchange.unknown.UNITS");
    }

    @Test
    void letsRowsWaitForARowThatHasToBePutRightFirst() {
        NamedFile wrong = file("models.csv", MODEL_HEADING, "Utility,utility submersible,single phase,0,25,42,30");
        NamedFile units =
                file("units.csv", UNIT_HEADING, "P-01,,Utility,Yard,,,2024-03-01", "P-02,,Utility,Yard,,,2024-03-01");
        NamedFile kit = file("kit.csv", "tag,piece,description", "P-01,hose,Hose");
        assertThat(problems(SITES, wrong, units, kit)).containsExactly("models.csv:2:head 2:pumps.curve.rises");

        Preview preview = exchange.preview(List.of(SITES, wrong, units, kit), me);
        assertThat(preview.wrong()).isEqualTo(1);
        assertThat(preview.waiting()).isEqualTo(3);
        assertThat(preview.added()).isEqualTo(1);
        assertThat(places.sites()).isEmpty();
    }

    @Test
    void refusesCurvesThatRiseCrossOrMixUnits() {
        assertThat(problems(models("Hump,sewage,single phase,0,25,20,26")))
                .containsExactly("models.csv:2:head 2:pumps.curve.rises");
        assertThat(problems(models("Back,sewage,single phase,0,25,0,20")))
                .containsExactly("models.csv:2:flow 2:pumps.curve.crosses");
        assertThat(problems(models("Late,sewage,single phase,3,25,20,20")))
                .containsExactly("models.csv:2:flow 1:pumps.curve.startsAtZero");
        assertThat(problems(models("Slip,sewage,single phase,0,25,40 gph,20")))
                .containsExactly("models.csv:2:flow 2:exchange.curve.units");
        assertThat(exchange.preview(List.of(models("Slip,sewage,single phase,0,25,40 gph,20")), me)
                        .problems()
                        .get(0)
                        .arguments())
                .containsExactly("gph", "gpm", "40 gpm");
        assertThat(problems(models("One,sewage,single phase,0,25,,")))
                .containsExactly("models.csv:2:flow 2:exchange.curve.missing");
        assertThat(problems(models("Gap,sewage,single phase,0,,20,5")))
                .containsExactly("models.csv:2:head 1:exchange.curve.gap");
        assertThat(problems(models("Comma,sewage,single phase,0,25,\"1,204\",\"7,5\"")))
                .containsExactly("models.csv:2:flow 2:exchange.comma", "models.csv:2:head 2:exchange.comma");
        assertThat(problems(models("Psi,sewage,single phase,0,25,20 psi,5")))
                .containsExactly("models.csv:2:flow 2:measures.otherUnit", "models.csv:2:flow 2:exchange.curve.units");
        assertThat(problems(file(
                        "models.csv",
                        "model,pump kind,drive,shut-off head,open flow",
                        "Bare,sewage,single phase,22,40 gpm",
                        "Half,sewage,single phase,22 ft,")))
                .containsExactly(
                        "models.csv:2:shut-off head:exchange.unitMissing", "models.csv:3:open flow:exchange.missing");
    }

    @Test
    void asksAboutWhatIsUnusualUntilTheRowSaysItWasChecked() {
        String heading = "model,pump kind,drive,shut-off head (ft),open flow (gph),checked";
        NamedFile slip = file("models.csv", heading, "Slip,sewage,single phase,22,40,");
        assertThat(problems(slip)).containsExactly("models.csv:2:open flow:pumps.unusual.openFlow");
        assertThat(exchange.preview(List.of(slip), me).problems().get(0).question())
                .isTrue();

        assertThat(exchange.takeIn(List.of(file("models.csv", heading, "Slip,sewage,single phase,22,40,yes")), me)
                        .added())
                .isEqualTo(1);
    }

    @Test
    void refusesDaysThatDoNotExistOrMeanTwoThings() {
        aYard();
        assertThat(problems(file(
                        "units.csv",
                        UNIT_HEADING,
                        "P-02,,Utility,Yard,,,2024-02-31",
                        "P-03,,Utility,Yard,,,03/04/2024",
                        "P-04,,Utility,Yard,,,spring",
                        "P-05,,Utility,Yard,,,29 Feb 2023",
                        "P-06,,Utility,Yard,,,2027-01-01")))
                .containsExactly(
                        "units.csv:2:in care from:exchange.day.noSuchDay",
                        "units.csv:3:in care from:exchange.day.twoWays",
                        "units.csv:4:in care from:exchange.date.unread",
                        "units.csv:5:in care from:exchange.day.noSuchDay",
                        "units.csv:6:in care from:pumps.inCareFrom.future");
        assertThat(problems(file(
                        "sites.csv",
                        "site,time zone,opening,opening 2,closing,closing name",
                        "A,America/Chicago,31 Feb to 20 Mar,,,",
                        "B,America/Chicago,soon,,,",
                        "C,America/Chicago,1 Mar to 20 Mar,10 Mar to 1 Apr,,",
                        "D,America/Chicago,,,,Fall",
                        "E,America/Chicago,1 Mar to 29 Feb,,,",
                        "F,America/Chicago,02-10 to 13-01,,,")))
                .containsExactly(
                        "sites.csv:2:opening:exchange.day.noSuchDay",
                        "sites.csv:3:opening:exchange.window.unread",
                        "sites.csv:4:opening 2:places.window.overlaps",
                        "sites.csv:5:closing:exchange.window.missing",
                        "sites.csv:7:opening:exchange.day.noSuchMonth");
    }

    @Test
    void refusesReadingsThatCannotBe() {
        aYard();
        String heading = "tag,meter,read at,value,what,last on old meter";
        exchange.takeIn(List.of(file("r.csv", heading, "P-01,run hours,2026-03-01 08:00,100,,")), me);
        assertThat(problems(file(
                        "r.csv",
                        heading,
                        "P-01,run hours,2026-03-02 08:00,99.5,,",
                        "P-01,run hours,2026-03-03 08:00,300,,",
                        "P-01,run hours,2026-03-01 08:00,101,,",
                        "P-01,run hours,2026-04-01 08:00,102,,",
                        "P-01,run hours,2026-03-08 02:30,103,,",
                        "P-01,starts,2026-03-04 08:00,1.5,,",
                        "P-01,run hours,2026-03-05 08:00,\"1,5\",,",
                        "P-01,run hours,2026-03-06 08:00,0,swapped,",
                        "P-01,run hours,2026-03-07 08:00,0,,120")))
                .containsExactly(
                        "r.csv:2:value:readings.value.below",
                        "r.csv:3:value:readings.value.tooFast",
                        "r.csv:4:value:readings.value.readAlready",
                        "r.csv:5:read at:readings.at.future",
                        "r.csv:6:read at:exchange.moment.skipped",
                        "r.csv:7:value:readings.value.decimals.STARTS",
                        "r.csv:8:value:exchange.comma",
                        "r.csv:9:last on old meter:exchange.missing",
                        "r.csv:10:last on old meter:exchange.reading.notSwapped");
        assertThat(readings.log(pumps.unitTagged("P-01").orElseThrow().id(), MeterKind.RUN_HOURS)
                        .lines())
                .hasSize(1);
    }

    @Test
    void refusesPiecesOfAKitAtTheirRow() {
        aYard();
        assertThat(problems(file(
                        "kit.csv",
                        "tag,piece,description,bore,length (ft),quantity",
                        "P-01,hose,Hose,1.5 in,50,1",
                        "P-01,hose,Hose,1.5 km,50,1",
                        "P-01,hose,Hose,1.5,50,1",
                        "P-01,snake,Hose,,,1",
                        "P-01,hose,Hose,300 in,50,1",
                        "P-01,clamp,Clamp,,,1.5",
                        "P-01,clamp,Clamp,,,0")))
                .containsExactly(
                        "kit.csv:3:bore:measures.otherUnit",
                        "kit.csv:4:bore:exchange.unitMissing",
                        "kit.csv:5:piece:exchange.choice",
                        "kit.csv:6:bore:pumps.impossible.kit.bore",
                        "kit.csv:7:quantity:exchange.whole",
                        "kit.csv:8:quantity:pumps.impossible.kit.quantity");
        assertThat(pumps.unitTagged("P-01").orElseThrow().kit()).isEmpty();
    }

    @Test
    void takesInNothingWhenOneRowOfOneFileIsWrong() {
        NamedFile customers = file("customers.csv", "customer", "Weir Bakery");
        assertThat(problems(customers, SITES, MODELS, file("units.csv", UNIT_HEADING, "P-01,,Utility,Yard,,,never")))
                .containsExactly("units.csv:2:in care from:exchange.date.unread");
        assertThat(places.customers()).isEmpty();
        assertThat(places.sites()).isEmpty();
        assertThat(pumps.models()).isEmpty();
    }

    @Test
    void leavesWhatStandsWhereAColumnIsLeftOut() {
        exchange.takeIn(
                List.of(
                        file("customers.csv", "customer,phone,note", "Weir Bakery,555,Ring"),
                        file(
                                "sites.csv",
                                "site,time zone,customer,opening,opening name",
                                "Yard,America/Chicago,Weir Bakery,1 Mar to 2 Apr,Thaw")),
                me);
        Preview done = exchange.takeIn(
                List.of(
                        file("customers.csv", "customer,phone", "Weir Bakery,556"),
                        file(
                                "sites.csv",
                                "site,time zone,address,opening",
                                "Yard,America/Chicago,Quay 3,1 Mar to 3 Apr")),
                me);

        assertThat(done.changed()).isEqualTo(2);
        assertThat(done.changes().stream().flatMap(change -> change.differences().stream()))
                .containsExactly(
                        new Preview.Difference("phone", "555", "556"),
                        new Preview.Difference("address", "", "Quay 3"),
                        new Preview.Difference("opening", "1 Mar to 2 Apr", "1 Mar to 3 Apr"));
        assertThat(places.customerNamed("Weir Bakery").orElseThrow().note()).isEqualTo("Ring");
        assertThat(places.siteNamed("Yard").orElseThrow()).satisfies(yard -> {
            assertThat(yard.customerName()).isEqualTo("Weir Bakery");
            assertThat(yard.windows().get(0).name()).isEqualTo("Thaw");
        });
        exchange.takeIn(List.of(file("customers.csv", "customer,note", "Weir Bakery,")), me);
        assertThat(places.customerNamed("Weir Bakery").orElseThrow().note()).isNull();
    }

    @Test
    void keepsTextThatLooksLikeAFormulaOrAScriptAsText() {
        List<String> names =
                List.of("=1+1", "+49 555", "@you", "-minus", "'quoted", "'=2", "<script>alert(1)</script>");
        NamedFile file = file(
                "customers.csv",
                Stream.concat(Stream.of("customer"), names.stream().map(Written::guarded))
                        .toArray(String[]::new));
        exchange.takeIn(List.of(file), me);

        assertThat(places.customers()).extracting("name").containsExactlyInAnyOrderElementsOf(names);
        String written = new String(exchange.export(FileKind.CUSTOMERS, me), StandardCharsets.UTF_8);
        assertThat(written.lines().skip(1)).noneMatch(line -> line.matches("[=+@\\-].*"));
        assertThat(exchange.preview(List.of(new NamedFile("back.csv", written.getBytes(StandardCharsets.UTF_8))), me)
                        .nothingToDo())
                .isTrue();
    }
}

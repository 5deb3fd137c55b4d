package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The bytes of a calendar against RFC 5545; the clauses are named where they are checked. */
class CalendarTextTests {

    private static final UUID UID = UUID.fromString("5b6b2a2e-7a3e-4a39-9c68-0d0f3a8c2f11");
    private static final String AWKWARD = "Wäsche; Filter, Größe \\ 3\nzweite Zeile: "
            + "Überlaufschutz prüfen 🛠 und Rückschlagklappe reinigen, danach Dichtung einfetten und Schlüssel zurückhängen";

    private static CalendarText.Days days(String first, String last, String summary) {
        return new CalendarText.Days(
                UID,
                3,
                Instant.parse("2026-03-01T08:09:10Z"),
                LocalDate.parse(first),
                LocalDate.parse(last),
                summary,
                "Dyer Court, north pit",
                AWKWARD,
                "https://freshet.example/tasks/17");
    }

    private static String text(CalendarText.Days... events) {
        return new String(CalendarText.of("Dyer Court; due work", List.of(events)), StandardCharsets.UTF_8);
    }

    private static String unfolded(String text) {
        return text.replaceAll("\r\n[ \t]", "");
    }

    /** RFC 5545 3.1: lines end in CRLF and have at most 75 octets; a character is not split. */
    @Test
    void foldsByOctetsAndBetweenCharacters() throws Exception {
        byte[] bytes = CalendarText.of("Dyer Court", List.of(days("2026-11-15", "2027-03-31", AWKWARD)));
        List<byte[]> lines = new ArrayList<>();
        int start = 0;
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] == '\n') {
                assertThat(bytes[i - 1]).isEqualTo((byte) '\r');
                lines.add(Arrays.copyOfRange(bytes, start, i - 1));
                start = i + 1;
            }
        }
        assertThat(start).as("the last line ends too").isEqualTo(bytes.length);
        assertThat(lines).anySatisfy(line -> assertThat(line.length).isGreaterThan(70));
        for (byte[] line : lines) {
            assertThat(line.length).isBetween(1, 75);
            StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(java.nio.ByteBuffer.wrap(line));
        }
    }

    /** RFC 5545 3.3.11: backslash, semicolon, comma and line break are escaped in text. */
    @Test
    void escapesText() {
        assertThat(unfolded(text(days("2026-11-15", "2027-03-31", "a\\b;c,d\ne"))))
                .contains("SUMMARY:a\\\\b\\;c\\,d\\ne\r\n")
                .contains("LOCATION:Dyer Court\\, north pit\r\n");
    }

    @Test
    void leavesControlCharactersOut() {
        assertThat(unfolded(text(days("2026-11-15", "2027-03-31", "a\u0000b\u0007c\r\nd\re"))))
                .contains("SUMMARY:abc\\nd\\ne\r\n");
    }

    /** RFC 5545 3.6, 3.6.1: PRODID and VERSION; UID and DTSTAMP in UTC; one of each. */
    @Test
    void namesWhatEveryCalendarAndEventMustHave() {
        List<String> lines = List.of(
                unfolded(text(days("2026-11-15", "2027-03-31", "Opening"))).split("\r\n"));

        assertThat(lines.get(0)).isEqualTo("BEGIN:VCALENDAR");
        assertThat(lines.get(lines.size() - 1)).isEqualTo("END:VCALENDAR");
        assertThat(lines)
                .containsOnlyOnce("VERSION:2.0")
                .containsOnlyOnce("BEGIN:VEVENT")
                .containsOnlyOnce("END:VEVENT")
                .containsOnlyOnce("UID:" + UID)
                .containsOnlyOnce("DTSTAMP:20260301T080910Z")
                .containsOnlyOnce("LAST-MODIFIED:20260301T080910Z")
                .containsOnlyOnce("SEQUENCE:3")
                .containsOnlyOnce("TRANSP:TRANSPARENT")
                .containsOnlyOnce("URL:https://freshet.example/tasks/17")
                .filteredOn(line -> line.startsWith("PRODID:"))
                .hasSize(1);
    }

    /** RFC 5545 3.6.1, 3.8.2.2: the end of whole days does not count, 15 November to 31 March ends on 1 April. */
    @Test
    void endsOnTheDayAfterTheLast() {
        assertThat(text(days("2026-11-15", "2027-03-31", "Winter")))
                .contains("DTSTART;VALUE=DATE:20261115\r\n", "DTEND;VALUE=DATE:20270401\r\n");
        assertThat(text(days("2028-02-29", "2028-02-29", "Leap")))
                .contains("DTSTART;VALUE=DATE:20280229\r\n", "DTEND;VALUE=DATE:20280301\r\n");
    }

    /** RFC 5545 3.4: at least one component. */
    @Test
    void isStillACalendarWhenNothingIsDue() {
        assertThat(text())
                .contains("BEGIN:VTIMEZONE\r\n", "TZOFFSETFROM:+0000\r\n", "TZOFFSETTO:+0000\r\n")
                .doesNotContain("VEVENT");
    }

    /** By another parser than the library that wrote it. */
    @Test
    void isReadByAnotherParserAsItWasMeant() {
        ICalendar calendar =
                Biweekly.parse(text(days("2026-11-15", "2027-03-31", AWKWARD))).first();

        assertThat(calendar.getVersion()).isEqualTo(ICalVersion.V2_0);
        assertThat(calendar.getNames().get(0).getValue()).isEqualTo("Dyer Court; due work");
        VEvent event = calendar.getEvents().get(0);
        assertThat(event.getSummary().getValue()).isEqualTo(AWKWARD);
        assertThat(event.getDescription().getValue()).isEqualTo(AWKWARD);
        assertThat(event.getLocation().getValue()).isEqualTo("Dyer Court, north pit");
        assertThat(event.getUid().getValue()).isEqualTo(UID.toString());
        assertThat(event.getDateStart().getValue().hasTime()).isFalse();
        assertThat(event.getDateStart().getValue().getRawComponents().toString(false, false))
                .isEqualTo("20261115");
        assertThat(event.getDateEnd().getValue().getRawComponents().toString(false, false))
                .isEqualTo("20270401");
        assertThat(calendar.validate(ICalVersion.V2_0).isEmpty())
                .as(() -> calendar.validate(ICalVersion.V2_0).toString())
                .isTrue();
    }
}

package freshet.notices;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.ComponentList;
import net.fortuna.ical4j.model.ParameterList;
import net.fortuna.ical4j.model.PropertyList;
import net.fortuna.ical4j.model.component.Standard;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.component.VTimeZone;
import net.fortuna.ical4j.model.parameter.Value;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.LastModified;
import net.fortuna.ical4j.model.property.Location;
import net.fortuna.ical4j.model.property.Name;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.RefreshInterval;
import net.fortuna.ical4j.model.property.Sequence;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.TzId;
import net.fortuna.ical4j.model.property.TzOffsetFrom;
import net.fortuna.ical4j.model.property.TzOffsetTo;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.Url;
import net.fortuna.ical4j.model.property.XProperty;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;

/** Writes whole days as an iCalendar object (RFC 5545, names of RFC 7986). */
final class CalendarText {

    private static final int LONGEST_LINE_OCTETS = 75;
    private static final int NEVER_FOLD = Integer.MAX_VALUE;

    private CalendarText() {}

    /** Whole days from the first to the last, both included; {@code sequence} and {@code changedAt} tell its latest revision. */
    record Days(
            UUID uid,
            int sequence,
            Instant changedAt,
            LocalDate first,
            LocalDate last,
            String summary,
            String place,
            String words,
            String address) {}

    static byte[] of(String name, List<Days> events) {
        Calendar calendar = new Calendar();
        calendar.add(new ProdId("-//Freshet//Due work//EN"));
        calendar.add(ImmutableVersion.VERSION_2_0);
        calendar.add(new Name(plain(name)));
        calendar.add(new XProperty("X-WR-CALNAME", plain(name)));
        calendar.add(new RefreshInterval(new ParameterList(List.of(Value.DURATION)), Duration.ofHours(1)));
        events.forEach(each -> calendar.add(event(each)));
        if (events.isEmpty()) {
            // an iCalendar object holds at least one component (RFC 5545, 3.4); this one says nothing
            calendar.add(utc());
        }
        StringWriter text = new StringWriter();
        try {
            new CalendarOutputter(false, NEVER_FOLD).output(calendar, text);
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return fold(text.toString()).getBytes(StandardCharsets.UTF_8);
    }

    private static VEvent event(Days days) {
        VEvent event = new VEvent(false);
        event.add(new Uid(days.uid().toString()));
        // without a METHOD both say when the event was last revised (RFC 5545, 3.8.7.2)
        event.add(new DtStamp(days.changedAt()));
        event.add(new LastModified(days.changedAt()));
        event.add(new Sequence(days.sequence()));
        ParameterList date = new ParameterList(List.of(Value.DATE));
        event.add(new DtStart<>(date, days.first()));
        // the end does not count
        event.add(new DtEnd<>(date, days.last().plusDays(1)));
        event.add(new Summary(plain(days.summary())));
        event.add(new Location(plain(days.place())));
        event.add(new Description(plain(days.words())));
        event.add(new Url(URI.create(days.address())));
        // work that is due does not make anybody busy
        event.add(ImmutableTransp.TRANSPARENT);
        return event;
    }

    private static VTimeZone utc() {
        Standard always = new Standard(new PropertyList(List.of(
                new DtStart<>("19700101T000000"),
                new TzOffsetFrom(java.time.ZoneOffset.UTC),
                new TzOffsetTo(java.time.ZoneOffset.UTC))));
        return new VTimeZone(new PropertyList(List.of(new TzId("Etc/UTC"))), new ComponentList<>(List.of(always)));
    }

    /** TEXT has no control characters but the line break (RFC 5545, 3.3.11). */
    private static String plain(String text) {
        return text.replaceAll("\\r\\n?", "\n").replaceAll("[\\p{Cc}&&[^\\n\\t]]", "");
    }

    /** Breaks lines so that none has more than 75 octets and no character is split; the library counts characters. */
    static String fold(String lines) {
        StringBuilder folded = new StringBuilder(lines.length() + lines.length() / 32);
        int octets = 0;
        for (int i = 0; i < lines.length(); ) {
            int point = lines.codePointAt(i);
            i += Character.charCount(point);
            if (point == '\r' || point == '\n') {
                folded.appendCodePoint(point);
                octets = 0;
                continue;
            }
            int size = point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
            if (octets + size > LONGEST_LINE_OCTETS) {
                folded.append("\r\n ");
                octets = 1;
            }
            folded.appendCodePoint(point);
            octets += size;
        }
        return folded.toString();
    }
}

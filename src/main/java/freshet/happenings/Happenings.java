package freshet.happenings;

import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Places;
import freshet.pumps.Pumps;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to what happened: reported by people, or by the rooms above for hires and repairs; withdrawn with a reason, never edited. */
@Service
@Transactional
public class Happenings {

    static final Duration CLOCKS_MAY_DIFFER = Duration.ofMinutes(5);
    static final Instant OLDEST = Instant.parse("2000-01-01T00:00:00Z");
    private static final int LONGEST = 500;

    private final HappeningTable table;
    private final Places places;
    private final Pumps pumps;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Happenings(
            HappeningTable table,
            Places places,
            Pumps pumps,
            People people,
            ApplicationEventPublisher events,
            Clock clock) {
        this.table = table;
        this.places = places;
        this.pumps = pumps;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Happening happening(long id) {
        return table.happening(id).orElseThrow(() -> new NotFound("happening", id));
    }

    /** Reports one happening and gives its id; the same report sent again by the same person changes nothing. */
    public long report(HappeningDraft draft, Person by) {
        return reportAll(List.of(draft), by).get(0);
    }

    /** Reports several at once, such as a storm at many places: all or none. */
    public List<Long> reportAll(Collection<HappeningDraft> drafts, Person by) {
        drafts.forEach(this::check);
        List<Long> ids = new ArrayList<>();
        List<Long> fresh = new ArrayList<>();
        for (HappeningDraft draft : drafts) {
            // the desk may well send a unit out twice in a minute; a person who reports twice pressed twice
            Optional<Long> same = draft.kind().byHand() ? table.same(draft, by) : Optional.empty();
            ids.add(same.orElseGet(() -> {
                long id = table.insert(draft, by, clock.instant());
                people.note(by, "happening reported", "happening:" + id, subject(draft) + " " + draft.kind());
                fresh.add(id);
                return id;
            }));
        }
        heard(fresh);
        return ids;
    }

    /** Takes a wrong report back; it stays to be read, with the reason, and no longer counts. What follows from a hire is put right there. */
    public void withdraw(long id, String why, Person by) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (why.isBlank()) {
            wrongs.add(Refused.Wrong.at("why", "happenings.why.missing"));
        } else if (why.strip().length() > LONGEST) {
            wrongs.add(Refused.Wrong.at("why", "happenings.long", LONGEST));
        }
        HappeningKind kind = happening(id).kind();
        if (kind == HappeningKind.HIRE_OUT || kind == HappeningKind.HIRE_RETURN) {
            wrongs.add(Refused.Wrong.at("", "happenings.withdraw.hire"));
        }
        Refused.ifAny(wrongs);
        takeBack(id, why.strip(), by);
        heard(List.of(id));
    }

    /** Gives the hire that a unit is out on another last day: the report that it went out is replaced by one that says so. */
    public void extendHire(long unitId, LocalDate dueBackOn, Person by) {
        Happening hire = table.ofUnit(unitId).stream()
                .filter(each -> each.stands() && each.kind() == HappeningKind.HIRE_OUT)
                .findFirst()
                .orElseThrow(() -> new NotFound("hire of unit", unitId));
        takeBack(hire.id(), null, by);
        report(HappeningDraft.hireOut(hire.at(), unitId, dueBackOn), by);
    }

    private void takeBack(long id, @Nullable String why, Person by) {
        Happening happening = happening(id);
        if (!table.withdraw(id, why, by, clock.instant())) {
            throw new Stale("happening", id);
        }
        people.note(by, "happening withdrawn", "happening:" + id, happening.kind() + (why == null ? "" : " " + why));
    }

    /** All that touched a unit, newest first, withdrawn ones among it: said of it, or of the site or position where it stood then. */
    @Transactional(readOnly = true)
    public List<Happening> ofUnit(long unitId) {
        return table.ofUnit(unitId);
    }

    /** What happened lately, newest first, withdrawn ones among it; of one kind, or of all, or only what people report. */
    @Transactional(readOnly = true)
    public List<Happening> recent(@Nullable HappeningKind kind, boolean byHand, int page, int size) {
        return table.recent(kind, byHand, size, (long) page * size);
    }

    @Transactional(readOnly = true)
    public int count(@Nullable HappeningKind kind, boolean byHand) {
        return table.count(kind, byHand);
    }

    /** Those of these units that are out on hire now, and until when. */
    @Transactional(readOnly = true)
    public Map<Long, Out> out(Collection<Long> unitIds) {
        return table.out(unitIds).stream().collect(Collectors.toMap(Out::unitId, Function.identity()));
    }

    /** The units that a happening touched. */
    @Transactional(readOnly = true)
    public Set<Long> touched(long id) {
        return table.touched(List.of(id));
    }

    private void heard(Collection<Long> ids) {
        Set<Long> touched = table.touched(ids);
        if (!touched.isEmpty()) {
            events.publishEvent(new HappeningReported(touched));
        }
    }

    private void check(HappeningDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        long wheres = Stream.of(draft.siteId(), draft.positionId(), draft.unitId())
                .filter(Objects::nonNull)
                .count();
        if (wheres != 1) {
            throw new IllegalArgumentException("a happening has one of site, position and unit: " + draft);
        }
        if (!draft.kind().byHand() && draft.unitId() == null) {
            throw new IllegalArgumentException("needs a unit: " + draft);
        }
        if ((draft.kind() == HappeningKind.HIRE_OUT) != (draft.dueBackOn() != null)) {
            throw new IllegalArgumentException("a hire that goes out, and nothing else, is due back: " + draft);
        }
        if (draft.at().isAfter(clock.instant().plus(CLOCKS_MAY_DIFFER))) {
            wrongs.add(Refused.Wrong.at("at", "happenings.at.future"));
        } else if (draft.at().isBefore(OLDEST)) {
            wrongs.add(Refused.Wrong.at("at", "happenings.at.old"));
        }
        if (draft.note() != null && draft.note().length() > LONGEST) {
            wrongs.add(Refused.Wrong.at("note", "happenings.long", LONGEST));
        }
        Refused.ifAny(wrongs);
        exists(draft);
    }

    private void exists(HappeningDraft draft) {
        if (draft.siteId() != null) {
            places.site(draft.siteId());
        } else if (draft.positionId() != null) {
            places.position(draft.positionId());
        } else if (draft.unitId() != null) {
            pumps.unit(draft.unitId());
        }
    }

    private static String subject(HappeningDraft draft) {
        return draft.siteId() != null
                ? "site:" + draft.siteId()
                : draft.positionId() != null ? "position:" + draft.positionId() : "unit:" + draft.unitId();
    }
}

package freshet.happenings;

import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Unit;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was typed about something that happened: which of the offered places, pits and pumps were ticked, or all places, or the tag of one
 * pump. {@code at} is by the clock of each place, empty for now.
 */
record HappeningForm(
        @Nullable String kind,
        @Nullable String at,
        @Nullable List<String> where,
        @Nullable Boolean everywhere,
        @Nullable String tag,
        @Nullable String note,
        // what the page was opened for, so that it comes again with the same choices
        @Nullable String site,
        @Nullable String unit,
        @Nullable String find) {

    static HappeningForm blank(
            @Nullable String kind,
            @Nullable String site,
            @Nullable String unit,
            @Nullable String find,
            List<String> ticked) {
        return new HappeningForm(kind, null, ticked, null, null, null, site, unit, find);
    }

    List<String> ticks() {
        return where == null ? List.of() : where;
    }

    public boolean ticked(String value) {
        return ticks().contains(value);
    }

    /** Where the report is about, as the page offers it. */
    record Place(
            String value,
            @Nullable Long siteId,
            @Nullable Long positionId,
            @Nullable Long unitId,
            ZoneId zone) {}

    /** The reports that were typed: one for each place that is meant. */
    List<HappeningDraft> drafts(List<Place> offered, List<Place> all, @Nullable Unit tagged, Person me, Instant now) {
        Typed typed = new Typed(me);
        HappeningKind chosen = typed.required("kind", chosen(), "happenings.kind.choose");
        List<Place> meant = Boolean.TRUE.equals(everywhere)
                ? all
                : offered.stream().filter(place -> ticked(place.value())).toList();
        String tagText = Typed.text(tag);
        if (tagText != null && tagged == null) {
            typed.wrong("tag", "happenings.tag.unknown", tagText);
        } else if (tagged == null && meant.isEmpty()) {
            typed.wrong("where", "happenings.where.choose");
        }
        List<HappeningDraft> drafts = new ArrayList<>();
        Instant minute = now.truncatedTo(ChronoUnit.MINUTES);
        List<Place> places = new ArrayList<>(meant);
        if (tagged != null) {
            places.add(new Place(
                    "unit:" + tagged.id(),
                    null,
                    null,
                    tagged.id(),
                    tagged.stand().zone()));
        }
        for (Place place : places) {
            Instant typedAt = typed.moment("at", at, place.zone());
            typed.refuseIfWrong();
            if (chosen != null) {
                drafts.add(new HappeningDraft(
                        chosen,
                        typedAt == null ? minute : typedAt,
                        place.siteId(),
                        place.positionId(),
                        place.unitId(),
                        null,
                        Typed.text(note)));
            }
        }
        typed.refuseIfWrong();
        return drafts;
    }

    private @Nullable HappeningKind chosen() {
        return HappeningKind.allByHand().stream()
                .filter(each -> each.name().equals(kind))
                .findFirst()
                .orElse(null);
    }
}

package freshet.pumps;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused;
import freshet.places.Position;
import freshet.places.Site;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What a unit, its place and its kit must be to stand in the register; fields are named under a prefix. */
final class UnitChecks {

    private static final Pattern TAG = Pattern.compile("[A-Za-z0-9][A-Za-z0-9-]{0,15}");
    private static final LocalDate EARLIEST = LocalDate.of(1950, 1, 1);
    private static final int MOST_KIT = 40;
    private static final double IN = 25.4;

    private UnitChecks() {}

    /** Wrongs of what can be seen in the draft alone. */
    static List<Refused.Wrong> unit(String prefix, UnitDraft draft, LocalDate today) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (draft.tag().isBlank()) {
            wrongs.add(at(prefix + "tag", "pumps.missing"));
        } else if (!TAG.matcher(draft.tag()).matches()) {
            wrongs.add(at(prefix + "tag", "pumps.tag.shape"));
        }
        Texts.length(prefix + "serial", draft.serial(), Texts.NAME, wrongs);
        Texts.length(prefix + "note", draft.note(), Texts.NOTE, wrongs);
        if (draft.inCareFrom().isAfter(today)) {
            wrongs.add(at(prefix + "inCareFrom", "pumps.inCareFrom.future"));
        } else if (draft.inCareFrom().isBefore(EARLIEST)) {
            wrongs.add(at(prefix + "inCareFrom", "pumps.inCareFrom.early"));
        }
        return wrongs;
    }

    /** Wrongs of a place; null where the site or the position is unknown. */
    static List<Refused.Wrong> place(String prefix, Whereabouts at, @Nullable Site site, @Nullable Position position) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (site == null) {
            wrongs.add(at(prefix + "place", "pumps.site.unknown"));
        } else if (at.positionId() != null && (position == null || position.siteId() != site.id())) {
            wrongs.add(at(prefix + "place", "pumps.position.elsewhere", site.name()));
        }
        Texts.length(prefix + "spot", at.spot(), Texts.NAME, wrongs);
        return wrongs;
    }

    static List<Refused.Wrong> kit(List<KitItem> items) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (items.size() > MOST_KIT) {
            wrongs.add(at("items", "pumps.kit.many", MOST_KIT));
        }
        for (int row = 0; row < items.size(); row++) {
            String prefix = "items[" + row + "].";
            KitItem item = items.get(row);
            Texts.name(prefix + "description", item.description(), wrongs);
            between(prefix + "bore", item.boreMm(), 0.25 * IN, 12 * IN, "pumps.impossible.kit.bore", wrongs);
            between(
                    prefix + "outletBore",
                    item.outletBoreMm(),
                    0.25 * IN,
                    12 * IN,
                    "pumps.impossible.kit.bore",
                    wrongs);
            between(prefix + "length", item.lengthM(), 0.01, 600, "pumps.impossible.kit.length", wrongs);
            between(prefix + "quantity", (double) item.quantity(), 1, 999, "pumps.impossible.kit.quantity", wrongs);
        }
        return wrongs;
    }

    private static void between(
            String field, @Nullable Double value, double low, double high, String code, List<Refused.Wrong> wrongs) {
        if (value != null && !(value >= low && value <= high)) {
            wrongs.add(at(field, code));
        }
    }
}

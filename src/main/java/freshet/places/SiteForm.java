package freshet.places;

import freshet.people.Refused;
import freshet.people.Typed;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed about a site; its windows end with blank rows for more, {@code more} asks for several. */
record SiteForm(
        @Nullable String name,
        @Nullable String zone,
        @Nullable String address,
        @Nullable Long customerId,
        @Nullable List<WindowRow> windows,
        @Nullable String more,
        @Nullable Integer version) {

    SiteForm {
        List<WindowRow> rows = new ArrayList<>(windows == null ? List.of() : windows);
        rows.removeIf(row -> row == null || row.gone());
        int blanks = more != null ? 3 : rows.isEmpty() ? 2 : 1;
        for (int i = 0; i < blanks; i++) {
            rows.add(WindowRow.BLANK);
        }
        windows = List.copyOf(rows);
    }

    static SiteForm blank(ZoneId usual) {
        return new SiteForm(null, usual.getId(), null, null, null, null, null);
    }

    static SiteForm of(Site site) {
        return new SiteForm(
                site.name(),
                site.zone().getId(),
                site.address(),
                site.customerId(),
                site.windows().stream().map(WindowRow::of).toList(),
                null,
                site.version());
    }

    /** The site that was typed; refused where it is none. */
    SiteDraft draft() {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        ZoneId itsZone = zone(wrongs);
        List<WindowDraft> drafts = new ArrayList<>();
        List<WindowRow> rows = windows == null ? List.of() : windows;
        for (int row = 0; row < rows.size(); row++) {
            WindowDraft draft = rows.get(row).gone() ? null : rows.get(row).draft("windows[" + row + "].", wrongs);
            if (draft != null) {
                drafts.add(draft);
            }
        }
        if (Typed.text(name) == null && !wrongs.isEmpty()) {
            wrongs.add(0, Refused.Wrong.at("name", "places.nameMissing"));
        }
        Refused.ifAny(wrongs);
        return new SiteDraft(
                Typed.textOrEmpty(name), Objects.requireNonNull(itsZone), Typed.text(address), customerId, drafts);
    }

    private @Nullable ZoneId zone(List<Refused.Wrong> wrongs) {
        String text = Typed.textOrEmpty(zone);
        if (Zones.known(text)) {
            return ZoneId.of(text);
        }
        wrongs.add(Refused.Wrong.at("zone", text.isEmpty() ? "places.zone.missing" : "places.zone.unknown", text));
        return null;
    }
}

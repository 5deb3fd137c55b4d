package freshet.places;

import jakarta.persistence.CascadeType;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.OneToMany;
import jakarta.persistence.OrderBy;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The row of a site with the rows of its windows. */
@Entity
@Table(name = "site")
class StoredSite {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    private String name = "";
    private String zone = "";
    private @Nullable String address;

    @ManyToOne(fetch = FetchType.LAZY)
    private @Nullable StoredCustomer customer;

    @OneToMany(cascade = CascadeType.ALL, orphanRemoval = true)
    @JoinColumn(name = "site_id", nullable = false, updatable = false)
    @OrderBy("fromMonth, fromDay, id")
    private List<StoredWindow> windows = new ArrayList<>();

    @Version
    private int version;

    /** Takes what the draft says, and tells whether its windows are other than before. */
    boolean become(SiteDraft draft, @Nullable StoredCustomer itsCustomer) {
        name = draft.name();
        zone = draft.zone().getId();
        address = draft.address();
        customer = itsCustomer;
        return draft.windows() != null && replaceWindows(draft.windows());
    }

    private boolean replaceWindows(List<WindowDraft> drafts) {
        List<StoredWindow> left = new ArrayList<>(windows);
        List<StoredWindow> added = new ArrayList<>();
        boolean changed = false;
        for (WindowDraft draft : drafts) {
            StoredWindow window = left.stream()
                    .filter(old -> old.isMeantBy(draft))
                    .findFirst()
                    .orElseGet(StoredWindow::new);
            changed |= window.become(draft);
            if (!left.remove(window)) {
                added.add(window);
            }
        }
        // an untouched collection stays clean, so that the same data is no change
        windows.addAll(added);
        windows.removeAll(left);
        return changed || !left.isEmpty();
    }

    int version() {
        return version;
    }

    Site seen() {
        long siteId = Objects.requireNonNull(id);
        Customer owner = customer == null ? null : customer.seen();
        return new Site(
                siteId,
                name,
                ZoneId.of(zone),
                address,
                owner == null ? null : owner.id(),
                owner == null ? null : owner.name(),
                windows.stream().map(window -> window.seen(siteId)).toList(),
                version);
    }
}

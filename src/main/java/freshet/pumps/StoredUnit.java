package freshet.pumps;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The row of a unit with the rows of its kit. */
@Entity
@Table(name = "pump_unit")
class StoredUnit {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    private String tag = "";
    private @Nullable String serial;
    private long modelId;
    private @Nullable Long customerId;
    private LocalDate inCareFrom = LocalDate.EPOCH;
    private @Nullable String note;
    private @Nullable LocalDate retiredOn;
    private @Nullable String retiredWhy;

    @ElementCollection(fetch = FetchType.LAZY)
    @CollectionTable(name = "kit_item", joinColumns = @JoinColumn(name = "unit_id"))
    @OrderColumn(name = "ordinal")
    private List<KitItem> kit = new ArrayList<>();

    @Version
    private int version;

    void become(UnitDraft draft) {
        tag = draft.tag();
        serial = draft.serial();
        modelId = draft.modelId();
        customerId = draft.customerId();
        inCareFrom = draft.inCareFrom();
        note = draft.note();
    }

    void carry(List<KitItem> items) {
        if (!List.copyOf(kit).equals(items)) {
            kit.clear();
            kit.addAll(items);
        }
    }

    void retire(LocalDate on, String why) {
        retiredOn = on;
        retiredWhy = why;
    }

    void comeBack() {
        retiredOn = null;
        retiredWhy = null;
    }

    long id() {
        return Objects.requireNonNull(id);
    }

    int version() {
        return version;
    }

    boolean retired() {
        return retiredOn != null;
    }

    LocalDate inCareFrom() {
        return inCareFrom;
    }

    /** Whether planning may come out otherwise than with the other draft. */
    boolean plansOtherwiseThan(UnitDraft draft) {
        return modelId != draft.modelId() || !inCareFrom.equals(draft.inCareFrom());
    }
}

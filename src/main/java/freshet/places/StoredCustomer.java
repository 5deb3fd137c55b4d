package freshet.places;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The row of a customer. */
@Entity
@Table(name = "customer")
class StoredCustomer {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    private String name = "";
    private @Nullable String phone;
    private @Nullable String note;

    @Version
    private int version;

    void become(CustomerDraft draft) {
        name = draft.name();
        phone = draft.phone();
        note = draft.note();
    }

    int version() {
        return version;
    }

    Customer seen() {
        return new Customer(Objects.requireNonNull(id), name, phone, note, version);
    }
}

package freshet.places;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The row of a position. */
@Entity
@Table(name = "position")
class StoredPosition {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    private long siteId;
    private String name = "";

    @Enumerated(EnumType.STRING)
    private PositionKind kind = PositionKind.OTHER;

    private @Nullable String note;

    @Version
    private int version;

    void become(PositionDraft draft) {
        siteId = draft.siteId();
        name = draft.name();
        kind = draft.kind();
        note = draft.note();
    }

    int version() {
        return version;
    }

    Position seen() {
        return new Position(Objects.requireNonNull(id), siteId, name, kind, note, version);
    }
}

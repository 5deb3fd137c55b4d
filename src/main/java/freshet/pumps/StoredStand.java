package freshet.pumps;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** The row of a stand: where a unit stood, and from when to when. */
@Entity
@Table(name = "stand")
class StoredStand {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    private long unitId;
    private long siteId;
    private @Nullable Long positionId;
    private @Nullable String spot;
    private Instant since = Instant.EPOCH;
    private @Nullable Instant until;
    private @Nullable Long movedBy;
    private @Nullable String note;

    protected StoredStand() {}

    StoredStand(long unitId, Whereabouts at, Instant since, @Nullable String note, long movedBy) {
        this.unitId = unitId;
        this.siteId = at.siteId();
        this.positionId = at.positionId();
        this.spot = at.spot();
        this.since = since;
        this.note = note;
        this.movedBy = movedBy;
    }

    void end(Instant at) {
        until = at;
    }

    Instant since() {
        return since;
    }

    Whereabouts at() {
        return new Whereabouts(siteId, positionId, spot);
    }
}

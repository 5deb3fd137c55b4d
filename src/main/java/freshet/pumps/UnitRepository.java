package freshet.pumps;

import jakarta.persistence.LockModeType;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

/** Rows of units. */
interface UnitRepository extends JpaRepository<StoredUnit, Long> {

    /** Holds the row, so that two moves of a unit come one after the other. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("from StoredUnit where id = :id")
    Optional<StoredUnit> held(long id);
}

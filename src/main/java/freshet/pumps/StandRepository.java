package freshet.pumps;

import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

/** Rows of stands. */
interface StandRepository extends JpaRepository<StoredStand, Long> {

    @Query("from StoredStand where unitId = :unitId and until is null")
    StoredStand now(long unitId);
}

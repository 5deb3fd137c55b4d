package freshet.places;

import java.util.List;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

/** Rows of positions. */
interface PositionRepository extends JpaRepository<StoredPosition, Long> {

    @Query("from StoredPosition order by siteId, lower(name)")
    List<StoredPosition> inOrder();

    @Query("from StoredPosition where siteId = :siteId order by lower(name)")
    List<StoredPosition> at(long siteId);
}

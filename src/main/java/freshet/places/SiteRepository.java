package freshet.places;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

/** Rows of sites with their windows and their customer. */
interface SiteRepository extends JpaRepository<StoredSite, Long> {

    @Query("from StoredSite s left join fetch s.customer left join fetch s.windows order by lower(s.name)")
    List<StoredSite> inOrder();

    @Query(
            "from StoredSite s left join fetch s.customer left join fetch s.windows where s.id in :ids order by lower(s.name)")
    List<StoredSite> among(Collection<Long> ids);

    @Query("from StoredSite s left join fetch s.customer left join fetch s.windows where lower(s.name) = lower(:name)")
    Optional<StoredSite> named(String name);
}

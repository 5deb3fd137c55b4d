package freshet.pumps;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

/** Rows of models with their curves. */
interface ModelRepository extends JpaRepository<StoredModel, Long> {

    @Query("from StoredModel m left join fetch m.points order by lower(m.name)")
    List<StoredModel> inOrder();

    @Query("from StoredModel m left join fetch m.points where m.id in :ids")
    List<StoredModel> among(Collection<Long> ids);

    @Query("from StoredModel m left join fetch m.points where lower(m.name) = lower(:name)")
    Optional<StoredModel> named(String name);
}

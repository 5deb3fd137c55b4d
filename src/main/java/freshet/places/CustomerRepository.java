package freshet.places;

import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

/** Rows of customers. */
interface CustomerRepository extends JpaRepository<StoredCustomer, Long> {

    @Query("from StoredCustomer order by lower(name)")
    List<StoredCustomer> inOrder();

    @Query("from StoredCustomer where lower(name) = lower(:name)")
    Optional<StoredCustomer> named(String name);
}

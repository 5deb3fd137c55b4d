package freshet.people;

import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface AccountRepository extends Repository<Account, Long> {

    Account saveAndFlush(Account account);

    Optional<Account> findById(long id);

    Optional<Account> findBySignInNameIgnoreCase(String signInName);

    List<Account> findAllByOrderByFullName();

    @Query("select count(a) > 0 from Account a")
    boolean anyone();

    @Query("select count(a) from Account a where a.role = freshet.people.Role.OWNER and a.active")
    long activeOwners();
}

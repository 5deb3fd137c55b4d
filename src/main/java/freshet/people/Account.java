package freshet.people;

import freshet.measures.UnitSystem;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The row of a person who may sign in. */
@Entity
@Table(name = "account")
class Account {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    String signInName;
    String fullName;

    @Enumerated(EnumType.STRING)
    Role role;

    String passwordHash;

    @Enumerated(EnumType.STRING)
    UnitSystem unitSystem = UnitSystem.US;

    @Enumerated(EnumType.STRING)
    Language language = Language.EN;

    boolean active = true;
    Instant createdAt;

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(name = "account_competence", joinColumns = @JoinColumn(name = "account_id"))
    @Column(name = "competence")
    @Enumerated(EnumType.STRING)
    Set<Competence> competences = EnumSet.noneOf(Competence.class);

    @Version
    int version;

    @SuppressWarnings("NullAway.Init")
    protected Account() {}

    Account(String signInName, String fullName, Role role, String passwordHash, Instant createdAt) {
        this.signInName = signInName;
        this.fullName = fullName;
        this.role = role;
        this.passwordHash = passwordHash;
        this.createdAt = createdAt;
    }

    SignedIn toSignedIn() {
        return new SignedIn(Objects.requireNonNull(id), signInName, role, active, passwordHash);
    }

    Person toPerson() {
        return new Person(
                Objects.requireNonNull(id),
                signInName,
                fullName,
                role,
                unitSystem,
                language,
                Set.copyOf(competences),
                active,
                version);
    }
}

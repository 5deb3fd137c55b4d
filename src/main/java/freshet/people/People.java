package freshet.people;

import static freshet.people.Refused.Wrong.at;

import freshet.measures.UnitSystem;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the people of this install: who they are, how they sign in, and the trail of what they did. */
@Service
@Transactional
public class People {

    /** Shortest password; NIST SP 800-63B asks for 8 at least (from memory). */
    public static final int SHORTEST_PASSWORD = 10;
    /** bcrypt reads no further than 72 bytes. */
    private static final int LONGEST_PASSWORD_BYTES = 72;

    private static final SecureRandom RANDOM = new SecureRandom();

    private final AccountRepository accounts;
    private final JdbcClient jdbc;
    private final PasswordEncoder passwords;
    private final Clock clock;

    People(AccountRepository accounts, JdbcClient jdbc, PasswordEncoder passwords, Clock clock) {
        this.accounts = accounts;
        this.jdbc = jdbc;
        this.passwords = passwords;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Person person(long id) {
        return account(id).toPerson();
    }

    @Transactional(readOnly = true)
    public Optional<Person> personNamed(String signInName) {
        return accounts.findBySignInNameIgnoreCase(signInName).map(Account::toPerson);
    }

    @Transactional(readOnly = true)
    public List<Person> everyone() {
        return accounts.findAllByOrderByFullName().stream()
                .map(Account::toPerson)
                .toList();
    }

    /** Whether anybody has an account yet; an empty install shows only the page that makes the first owner. */
    @Transactional(readOnly = true)
    public boolean anyone() {
        return accounts.anyone();
    }

    /** Makes the owner's account of an empty install; refused once anybody has one. */
    public Person welcomeFirstOwner(String signInName, String fullName, String password, UnitSystem unitSystem) {
        jdbc.sql("lock table account in exclusive mode").update();
        if (accounts.anyone()) {
            throw new NotAllowed("this install has an owner already");
        }
        return add(signInName, fullName, password, Role.OWNER, Set.of(), unitSystem, Language.EN, null);
    }

    public Person addPerson(
            String signInName, String fullName, String password, Role role, Set<Competence> competences, Person by) {
        return add(signInName, fullName, password, role, competences, by.unitSystem(), by.language(), by);
    }

    private Person add(
            String signInName,
            String fullName,
            String password,
            Role role,
            Set<Competence> competences,
            UnitSystem unitSystem,
            Language language,
            @Nullable Person by) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (!signInName.matches("[^\\s]{2,60}")) {
            wrongs.add(at("signInName", "people.signInName.shape"));
        } else if (accounts.findBySignInNameIgnoreCase(signInName).isPresent()) {
            wrongs.add(at("signInName", "people.signInName.taken", signInName));
        }
        if (fullName.isBlank() || fullName.strip().length() > 100) {
            wrongs.add(at("fullName", "people.fullName.shape"));
        }
        checkPassword(password, "password", wrongs);
        Refused.ifAny(wrongs);
        Account account = new Account(signInName, fullName.strip(), role, passwords.encode(password), clock.instant());
        account.competences.addAll(competences);
        account.unitSystem = unitSystem;
        account.language = language;
        try {
            account = accounts.saveAndFlush(account);
        } catch (DataIntegrityViolationException taken) {
            throw Refused.because("signInName", "people.signInName.taken", signInName);
        }
        Person person = account.toPerson();
        note(by, "person added", "person:" + person.id(), fullName.strip());
        return person;
    }

    /** Changes what an owner may change of somebody, a forgotten password too; the last active owner stays an owner. */
    public void changePerson(
            long id,
            int version,
            String fullName,
            Role role,
            Set<Competence> competences,
            boolean active,
            @Nullable String newPassword,
            Person by) {
        Account account = account(id);
        if (account.version != version) {
            throw new Stale("person", id);
        }
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (fullName.isBlank() || fullName.strip().length() > 100) {
            wrongs.add(at("fullName", "people.fullName.shape"));
        }
        if (newPassword != null) {
            checkPassword(newPassword, "password", wrongs);
        }
        boolean staysOwner = role == Role.OWNER && active;
        if (account.role == Role.OWNER && account.active && !staysOwner && accounts.activeOwners() == 1) {
            wrongs.add(at("role", "people.lastOwner"));
        }
        Refused.ifAny(wrongs);
        if (newPassword != null) {
            account.passwordHash = passwords.encode(newPassword);
            note(by, "new password given", "person:" + id, null);
        }
        account.fullName = fullName.strip();
        account.role = role;
        account.active = active;
        account.competences.clear();
        account.competences.addAll(competences);
        accounts.saveAndFlush(account);
        note(by, "person changed", "person:" + id, role + " " + competences + (active ? "" : " inactive"));
    }

    /** In which units the person reads from now on. */
    public void readIn(long id, UnitSystem unitSystem) {
        Account account = account(id);
        account.unitSystem = unitSystem;
        accounts.saveAndFlush(account);
    }

    /** In which language the person reads from now on. */
    public void readIn(long id, Language language) {
        Account account = account(id);
        account.language = language;
        accounts.saveAndFlush(account);
    }

    public void changePassword(long id, String current, String next) {
        Account account = account(id);
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (!passwords.matches(current, account.passwordHash)) {
            wrongs.add(at("current", "people.password.wrong"));
        }
        checkPassword(next, "next", wrongs);
        Refused.ifAny(wrongs);
        account.passwordHash = passwords.encode(next);
        accounts.saveAndFlush(account);
        note(account.toPerson(), "password changed", "person:" + id, null);
    }

    private static void checkPassword(String password, String field, List<Refused.Wrong> wrongs) {
        if (password.length() < SHORTEST_PASSWORD) {
            wrongs.add(at(field, "people.password.short", SHORTEST_PASSWORD));
        } else if (password.getBytes(StandardCharsets.UTF_8).length > LONGEST_PASSWORD_BYTES) {
            wrongs.add(at(field, "people.password.long", LONGEST_PASSWORD_BYTES));
        }
    }

    /** Makes a token for a program that works for this person; it is shown once, only its digest is kept. */
    public String issueToken(long personId, String label) {
        byte[] bytes = new byte[32];
        RANDOM.nextBytes(bytes);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        acceptToken(personId, label, token);
        return token;
    }

    /** Accepts a token chosen by whoever set up the install. */
    public void acceptToken(long personId, String label, String token) {
        if (label.isBlank() || label.strip().length() > 60) {
            throw Refused.because("label", "people.token.label");
        }
        jdbc.sql("insert into api_token (account_id, label, digest, created_at) values (?, ?, ?, ?)")
                .params(personId, label.strip(), digest(token), now())
                .update();
        note(person(personId), "token issued", "person:" + personId, label.strip());
    }

    public void revokeToken(long personId, long tokenId) {
        int revoked = jdbc.sql(
                        "update api_token set revoked_at = ? where id = ? and account_id = ? and revoked_at is null")
                .params(now(), tokenId, personId)
                .update();
        if (revoked == 0) {
            throw new NotFound("token", tokenId);
        }
        note(person(personId), "token revoked", "person:" + personId, null);
    }

    @Transactional(readOnly = true)
    public List<Token> tokens(long personId) {
        return jdbc.sql("""
                        select id, label, created_at from api_token
                        where account_id = ? and revoked_at is null order by created_at desc""")
                .param(personId)
                .query((row, n) -> new Token(
                        row.getLong("id"),
                        row.getString("label"),
                        row.getObject("created_at", OffsetDateTime.class).toInstant()))
                .list();
    }

    /** Who a token works for, if it is a live token of an active person. */
    @Transactional(readOnly = true)
    public Optional<Person> byToken(String token) {
        return jdbc.sql("""
                        select t.account_id from api_token t join account a on a.id = t.account_id
                        where t.digest = ? and t.revoked_at is null and a.active""").param(digest(token)).query(Long.class).optional().map(this::person);
    }

    /** Writes one line into the trail; it is never changed. */
    public void note(@Nullable Person who, String action, String subject, @Nullable String detail) {
        jdbc.sql("insert into audit_entry (at, account_id, action, subject, detail) values (?, ?, ?, ?, ?)")
                .param(1, now())
                .param(2, who == null ? null : who.id(), java.sql.Types.BIGINT)
                .param(3, action)
                .param(4, subject)
                .param(5, detail, java.sql.Types.VARCHAR)
                .update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private Account account(long id) {
        return accounts.findById(id).orElseThrow(() -> new NotFound("person", id));
    }

    private static String digest(String token) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException every) {
            throw new IllegalStateException("every Java has SHA-256", every);
        }
    }
}

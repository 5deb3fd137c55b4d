package freshet.people;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.CredentialsContainer;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;

/** What the session knows of a person: the id; everything else is read anew for each request. */
final class SignedIn implements UserDetails, CredentialsContainer {

    private static final long serialVersionUID = 1;

    private final long id;
    private final String name;
    private final Role role;
    private final boolean active;
    private @Nullable String passwordHash;

    SignedIn(long id, String name, Role role, boolean active, @Nullable String passwordHash) {
        this.id = id;
        this.name = name;
        this.role = role;
        this.active = active;
        this.passwordHash = passwordHash;
    }

    long id() {
        return id;
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return List.of(new SimpleGrantedAuthority("ROLE_" + role));
    }

    @Override
    public @Nullable String getPassword() {
        return passwordHash;
    }

    @Override
    public String getUsername() {
        return name;
    }

    @Override
    public boolean isEnabled() {
        return active;
    }

    @Override
    public void eraseCredentials() {
        passwordHash = null;
    }
}

package freshet.people;

import freshet.measures.UnitSystem;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What was typed about a person. */
record PersonForm(
        @Nullable String signInName,
        @Nullable String fullName,
        @Nullable String password,
        @Nullable Role role,
        @Nullable Set<Competence> competences,
        @Nullable UnitSystem unitSystem,
        @Nullable Language language,
        @Nullable Boolean active,
        @Nullable Integer version) {

    static PersonForm blank(Language language) {
        return new PersonForm(null, null, null, Role.TECHNICIAN, Set.of(), UnitSystem.US, language, true, null);
    }

    static PersonForm of(Person person) {
        return new PersonForm(
                person.signInName(),
                person.fullName(),
                null,
                person.role(),
                person.competences(),
                person.unitSystem(),
                person.language(),
                person.active(),
                person.version());
    }

    String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    /** A password is taken as it was typed, blanks and all. */
    String secret() {
        return password == null ? "" : password;
    }

    public Role chosenRole() {
        return role == null ? Role.TECHNICIAN : role;
    }

    public Set<Competence> chosenCompetences() {
        return competences == null ? Set.of() : competences;
    }
}

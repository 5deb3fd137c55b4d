package freshet.people;

import freshet.measures.UnitSystem;
import java.util.Locale;
import java.util.Set;

/** Somebody who works with the fleet. */
public record Person(
        long id,
        String signInName,
        String fullName,
        Role role,
        UnitSystem unitSystem,
        Language language,
        Set<Competence> competences,
        boolean active,
        int version) {

    public Locale locale() {
        return language.locale();
    }

    public boolean owner() {
        return role == Role.OWNER;
    }

    public boolean competentFor(Competence competence) {
        return competences.contains(competence);
    }
}

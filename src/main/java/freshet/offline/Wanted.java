package freshet.offline;

import java.util.Set;

/** What somebody wants to take along: whole places, rounds, and the work that is assigned to them. */
public record Wanted(Set<Long> sites, Set<Long> rounds, boolean mine) {

    public static Wanted at(long siteId) {
        return new Wanted(Set.of(siteId), Set.of(), false);
    }
}

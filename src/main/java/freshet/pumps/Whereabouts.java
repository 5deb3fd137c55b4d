package freshet.pumps;

import org.jspecify.annotations.Nullable;

/** A place for a unit: a site, perhaps one of its positions, perhaps a spot in plain words such as "Bay 2". */
public record Whereabouts(
        long siteId, @Nullable Long positionId, @Nullable String spot) {

    public static Whereabouts at(long siteId) {
        return new Whereabouts(siteId, null, null);
    }
}

package freshet.fleet;

import freshet.pumps.PumpKind;
import org.jspecify.annotations.Nullable;

/**
 * What to look for in the fleet: words found in tag, serial, model, customer or place; null asks nothing. {@code page} counts from 0.
 */
public record FleetQuery(
        @Nullable String text,
        @Nullable PumpKind kind,
        @Nullable Long siteId,
        @Nullable Long customerId,
        boolean ownOnly,
        @Nullable Word word,
        boolean retired,
        Sort sort,
        int page,
        int size) {

    /** The order of the list. */
    public enum Sort {
        TAG,
        WORST,
        DUE,
        CAPACITY,
        SITE
    }

    public static final int LARGEST_PAGE = 500;

    public FleetQuery {
        page = Math.max(page, 0);
        size = Math.min(Math.max(size, 1), LARGEST_PAGE);
    }

    /** The units in care, by tag. */
    public static FleetQuery all() {
        return new FleetQuery(null, null, null, null, false, null, false, Sort.TAG, 0, 50);
    }

    public FleetQuery only(Word its) {
        return new FleetQuery(text, kind, siteId, customerId, ownOnly, its, retired, sort, page, size);
    }

    public FleetQuery at(long site) {
        return new FleetQuery(text, kind, site, customerId, ownOnly, word, retired, sort, page, size);
    }

    public FleetQuery sorted(Sort by) {
        return new FleetQuery(text, kind, siteId, customerId, ownOnly, word, retired, by, page, size);
    }

    public FleetQuery page(int number, int ofSize) {
        return new FleetQuery(text, kind, siteId, customerId, ownOnly, word, retired, sort, number, ofSize);
    }
}

package freshet.places;

import java.util.Set;

/** The windows or the time zone of these sites were changed. */
public record SitesChanged(Set<Long> siteIds) {}

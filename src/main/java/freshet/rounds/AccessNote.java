package freshet.rounds;

/** How one gets in at a site; {@code version} is -1 while nothing is written. */
public record AccessNote(long siteId, String note, int version) {}

package freshet.wear;

/** A part of the year by a site's windows; a site without a season has one part. */
public enum SeasonPart {
    IN_SEASON,
    OUT_OF_SEASON,
    ALL_YEAR
}

package freshet.pumps;

/** How a rated curve was given: by its points, or only by its shut-off head and its open flow. */
public enum CurveForm {
    TABLE,
    TWO_PARAMETER
}

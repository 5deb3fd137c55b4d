package freshet.findings;

/** Why a unit is not to be used whatever else is known: kept apart after a hire until it was looked at, or tagged out by somebody. */
public enum HoldKind {
    QUARANTINE,
    TAGGED_OUT
}

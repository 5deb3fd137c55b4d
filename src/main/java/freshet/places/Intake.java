package freshet.places;

/** What taking in many rows did: how many were new, how many changed, how many stood like that already. */
public record Intake(int added, int changed, int same) {}

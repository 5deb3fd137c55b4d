package freshet.people;

/** What a person may do: an owner keeps the fleet and its people, a technician works on it. */
public enum Role {
    OWNER,
    TECHNICIAN
}

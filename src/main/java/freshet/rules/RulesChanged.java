package freshet.rules;

/** Rules were added, changed or put to rest; everything is to be planned anew. */
public record RulesChanged() {}

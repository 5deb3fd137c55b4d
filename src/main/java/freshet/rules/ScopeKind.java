package freshet.rules;

/** For whom a rule can be meant, as a form offers it. */
enum ScopeKind {
    EVERY,
    KIND,
    MODEL,
    SITE,
    POSITION,
    UNIT
}

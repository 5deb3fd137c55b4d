package freshet.checklists;

/** One of the answers to choose from, and what it means. */
public record Choice(Verdict verdict, String words) {}

package freshet.care;

import java.time.Instant;

/** An answer that is kept but not yet signed, and who gave it. */
public record SavedAnswer(Answer answer, long answeredBy, String answeredByName, Instant answeredAt) {}

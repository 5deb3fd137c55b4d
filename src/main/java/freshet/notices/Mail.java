package freshet.notices;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A mail that is or was owed to a person. {@code subject} and {@code day} together are what it is about: a second mail about the same
 * is never owed. {@code zone} is that of the place it is about.
 */
public record Mail(
        long id,
        long personId,
        String personName,
        MailKind kind,
        String subject,
        LocalDate day,
        ZoneId zone,
        MailState state,
        Instant queuedAt,
        Instant notBefore,
        int tries,
        @Nullable Trouble trouble,
        @Nullable Instant sentAt,
        @Nullable String sentTo,
        @Nullable String title,
        UUID messageId) {

    public boolean waiting() {
        return state == MailState.WAITING;
    }

    /** The number that the subject ends with, such as that of the finding. */
    long subjectId() {
        return Long.parseLong(subject.substring(subject.indexOf(':') + 1));
    }
}

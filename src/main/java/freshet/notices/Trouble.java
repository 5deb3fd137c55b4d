package freshet.notices;

import jakarta.mail.SendFailedException;
import java.io.InterruptedIOException;
import java.net.UnknownHostException;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import javax.net.ssl.SSLException;
import org.jspecify.annotations.Nullable;
import org.springframework.mail.MailAuthenticationException;
import org.springframework.mail.MailSendException;

/** Why a mail did not go out, as a person would say it; each has its message {@code notices.trouble.<trouble>}. */
public enum Trouble {
    /** Nobody knows a machine of the server's name. */
    NO_SUCH_HOST,
    /** Nothing answers at the server's address. */
    NO_ANSWER,
    /** The server did not answer in time. */
    TOO_SLOW,
    /** No secure connection came about. */
    NOT_SECURE,
    /** The server does not accept the name or the password. */
    SIGN_IN_REFUSED,
    /** The server does not take mail for this address. */
    ADDRESS_REFUSED,
    /** The server answered and did not take the mail. */
    REFUSED,
    /** The fault is on this side. */
    OURS;

    /** Whether every other mail would meet the same now. */
    boolean ofTheServer() {
        return ordinal() <= SIGN_IN_REFUSED.ordinal();
    }

    /** The key of its message. */
    public String code() {
        return "notices.trouble." + name().toLowerCase(Locale.ROOT);
    }

    static Trouble of(Exception failure) {
        Trouble found = seek(failure, new HashSet<>());
        return found != null ? found : failure instanceof MailSendException ? REFUSED : OURS;
    }

    private static @Nullable Trouble seek(@Nullable Throwable each, Set<Throwable> seen) {
        if (each == null || !seen.add(each)) {
            return null;
        }
        if (each instanceof MailSendException several) {
            for (Exception failed : several.getFailedMessages().values()) {
                Trouble found = seek(failed, seen);
                if (found != null) {
                    return found;
                }
            }
        }
        Trouble deeper = seek(each.getCause(), seen);
        return deeper != null ? deeper : named(each);
    }

    private static @Nullable Trouble named(Throwable each) {
        if (each instanceof UnknownHostException) {
            return NO_SUCH_HOST;
        } else if (each instanceof InterruptedIOException) {
            return TOO_SLOW;
        } else if (each instanceof SSLException) {
            return NOT_SECURE;
        } else if (each instanceof MailAuthenticationException) {
            return SIGN_IN_REFUSED;
        } else if (each instanceof SendFailedException refused
                && refused.getInvalidAddresses() != null
                && refused.getInvalidAddresses().length > 0) {
            return ADDRESS_REFUSED;
        } else if (each instanceof java.io.IOException) {
            return NO_ANSWER;
        }
        return null;
    }
}

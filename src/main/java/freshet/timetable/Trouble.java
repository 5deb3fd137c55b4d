package freshet.timetable;

import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.transaction.CannotCreateTransactionException;

/** Why a run failed, as far as it can be said in plain words; the log has the rest. */
public enum Trouble {
    DATABASE_AWAY,
    CROSSED,
    UNFORESEEN;

    static Trouble of(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof ConcurrencyFailureException) {
                return CROSSED;
            }
            if (cause instanceof DataAccessResourceFailureException
                    || cause instanceof CannotCreateTransactionException) {
                return DATABASE_AWAY;
            }
        }
        return UNFORESEEN;
    }

    public String code() {
        return "timetable.trouble." + name();
    }
}

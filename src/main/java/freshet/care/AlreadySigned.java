package freshet.care;

/** The task was signed meanwhile; its record tells by whom and how. */
public final class AlreadySigned extends RuntimeException {

    private final long recordId;

    AlreadySigned(long taskId, long recordId) {
        super("task " + taskId + " is signed as record " + recordId);
        this.recordId = recordId;
    }

    public long recordId() {
        return recordId;
    }
}

package freshet.exchange;

/** Nothing was taken in: the files have problems, or would do something else than what was agreed to. */
public final class ImportRefused extends RuntimeException {

    private final transient Preview preview;

    ImportRefused(Preview preview) {
        super(
                preview.clean()
                        ? "the outcome is another than agreed"
                        : preview.problems().size() + " problems, the first: "
                                + preview.problems().get(0));
        this.preview = preview;
    }

    /** How it stands now. */
    public Preview preview() {
        return preview;
    }
}

package freshet.offline;

/** Why an entry cannot be taken in as it is: something happened meanwhile that whoever wrote it did not know. */
final class AtOdds extends RuntimeException {

    private final Conflict.Why why;

    AtOdds(Conflict.Why why) {
        super(why.name());
        this.why = why;
    }

    Conflict.Why why() {
        return why;
    }
}

package freshet.hands;

/** What is added to planned minutes for what will be found: 30 % unless an owner set it (common practice, no source). */
public record FindingsShare(int percent, int version) {

    static final FindingsShare USUAL = new FindingsShare(30, -1);

    double factor() {
        return 1 + percent / 100.0;
    }
}

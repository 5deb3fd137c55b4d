package freshet.jobs;

import java.util.List;

/** One thing to know before a pump goes out on a job: how it looks, and its sentence as a message with its arguments. */
record Check(Looks looks, String code, List<Object> arguments) {

    /** How it looks, worst first, with the mark that stands beside it. */
    enum Looks {
        FAILS("m-no"),
        UNKNOWN("m-unknown"),
        THIN("m-limits"),
        HOLDS("m-ready");

        private final String mark;

        Looks(String mark) {
            this.mark = mark;
        }

        public String mark() {
            return mark;
        }
    }

    static Check of(Looks looks, String code, Object... arguments) {
        return new Check(looks, code, List.of(arguments));
    }
}

package freshet.findings;

import java.util.Arrays;

/** How a pump shows that it failed, in plain words; each has the code of ISO 14224 (from memory) that tables of failures use. */
public enum FailureMode {
    WONT_START("FTS"),
    WONT_STOP("STP"),
    STOPS_BY_ITSELF("UST"),
    WEAK("LOO"),
    NOTHING_COMES_OUT("NOO"),
    SURGING("ERO"),
    BLOCKED("PLU"),
    LEAKS_WATER("ELP"),
    LEAKS_OIL("ELU"),
    WATER_IN_OIL("INL"),
    NOISY("NOI"),
    SHAKING("VIB"),
    HOT("OHE"),
    FLOAT_OR_GAUGE_WRONG("AIR"),
    BROKEN_BODY("STD"),
    OUT_OF_LIMIT("PDE"),
    STANDBY_LOST("LOR"),
    SMALL_DEFECT("SER"),
    UNKNOWN("UNK");

    private final String code;

    FailureMode(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    static FailureMode ofCode(String code) {
        return Arrays.stream(values())
                .filter(mode -> mode.code.equals(code))
                .findFirst()
                .orElse(UNKNOWN);
    }
}

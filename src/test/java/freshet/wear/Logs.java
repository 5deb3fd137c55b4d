package freshet.wear;

import freshet.findings.Finding;
import freshet.hydraulics.FlowTestReduction.StatedBy;
import freshet.readings.ComparedTest;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** Meter logs, tests and findings made by hand for tests of pure composition. */
final class Logs {

    static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    private Logs() {}

    /** Moments and lifetime hours in turn, such as {@code "2026-03-01T12:00:00Z", 12.5}. */
    static MeterLog log(Object... momentsAndHours) {
        List<MeterLog.Line> lines = new ArrayList<>();
        for (int i = 0; i < momentsAndHours.length; i += 2) {
            BigDecimal hours = new BigDecimal(momentsAndHours[i + 1].toString());
            lines.add(new MeterLog.Line(
                    MeterLog.What.READ,
                    Instant.parse((String) momentsAndHours[i]),
                    hours,
                    false,
                    null,
                    null,
                    hours,
                    null,
                    null));
        }
        return new MeterLog(1, MeterKind.RUN_HOURS, List.copyOf(lines), null, null);
    }

    static ComparedTest test(String at, Double fraction, Double uncertainty) {
        return new ComparedTest(1, 1, Instant.parse(at), 3, 8, fraction, uncertainty, StatedBy.FLOW, false);
    }

    static Finding finding(int severity, String opened, String closed) {
        return new Finding(
                1,
                1,
                "BF-01",
                CHICAGO,
                null,
                null,
                severity,
                "what",
                null,
                null,
                null,
                Instant.parse(opened),
                null,
                closed == null ? null : Instant.parse(closed),
                null,
                closed == null ? null : "how",
                null,
                0);
    }
}

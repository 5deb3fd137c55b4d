package freshet.readings;

import freshet.hydraulics.MeasuredFlow.Method;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.hibernate.annotations.BatchSize;
import org.jspecify.annotations.Nullable;

/** A flow test as it was measured and written down; it is never changed, only withdrawn. */
@Entity
@Table(name = "flow_test")
class FlowTest {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    long unitId;
    Instant at;

    @Nullable
    String rig;

    String headBy;

    @Enumerated(EnumType.STRING)
    Method method;

    @Embedded
    FlowTestDraft.@Nullable Container container;

    @Embedded
    FlowBy.@Nullable PitFall pitFall;

    @Embedded
    FlowBy.@Nullable LineMeter lineMeter;

    @Embedded
    FlowBy.@Nullable Jet jet;

    @Nullable
    Double speedRpm;

    @ElementCollection
    @CollectionTable(name = "flow_test_repeat", joinColumns = @JoinColumn(name = "flow_test_id"))
    @OrderColumn(name = "ordinal")
    @Column(name = "seconds")
    @BatchSize(size = 500)
    List<Double> seconds = new ArrayList<>();

    @Column(name = "lift_m")
    @Nullable
    Double liftM;

    @Embedded
    FlowTestDraft.@Nullable Gauge gauge;

    @Embedded
    FlowTestDraft.@Nullable ShutOff shutOff;

    @Column(name = "lift_u_m")
    double heightUncertaintyM;

    @Column(name = "water_c")
    double waterC;

    @Column(name = "pump_outlet_mm")
    @Nullable
    Double pumpOutletMm;

    double exitLoss;

    @ElementCollection
    @CollectionTable(name = "flow_test_section", joinColumns = @JoinColumn(name = "flow_test_id"))
    @OrderColumn(name = "ordinal")
    @BatchSize(size = 500)
    List<FlowTestDraft.Piece> pieces = new ArrayList<>();

    @Nullable
    Double volts;

    @Nullable
    Double amps;

    @Nullable
    Double frequencyHz;

    @Nullable
    String note;

    @Nullable
    Long recordedBy;

    Instant recordedAt;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    Long withdrawnBy;

    @Nullable
    String withdrawnWhy;

    protected FlowTest() {}

    FlowTest(FlowTestDraft draft, long recordedBy, Instant recordedAt) {
        unitId = draft.unitId();
        at = draft.at();
        rig = draft.rig();
        headBy = draft.gauge() == null ? "LINE" : "GAUGE";
        container = draft.container();
        measuredBy(draft.by());
        speedRpm = draft.speedRpm();
        seconds.addAll(draft.seconds());
        liftM = draft.liftM();
        gauge = draft.gauge();
        shutOff = draft.shutOff();
        heightUncertaintyM = draft.heightUncertaintyM();
        waterC = draft.waterC();
        pumpOutletMm = draft.pumpOutletMm();
        exitLoss = draft.exitLoss();
        pieces.addAll(draft.pieces());
        volts = draft.volts();
        amps = draft.amps();
        frequencyHz = draft.frequencyHz();
        note = draft.note();
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    FlowTestDraft facts() {
        return new FlowTestDraft(
                unitId,
                at,
                rig,
                container,
                seconds,
                liftM,
                gauge,
                heightUncertaintyM,
                waterC,
                pumpOutletMm,
                exitLoss,
                pieces,
                volts,
                amps,
                frequencyHz,
                note,
                shutOff,
                Stream.<@Nullable FlowBy>of(pitFall, lineMeter, jet)
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null),
                speedRpm);
    }

    private void measuredBy(@Nullable FlowBy by) {
        method = by == null ? Method.TIMED_CONTAINER : by.method();
        if (by instanceof FlowBy.PitFall fell) {
            pitFall = fell;
        } else if (by instanceof FlowBy.LineMeter read) {
            lineMeter = read;
        } else if (by instanceof FlowBy.Jet sprang) {
            jet = sprang;
        }
    }

    boolean stands() {
        return withdrawnAt == null;
    }

    void withdraw(Instant at, long by, String why) {
        withdrawnAt = at;
        withdrawnBy = by;
        withdrawnWhy = why;
    }

    FlowTestResult.@Nullable Withdrawal withdrawal() {
        return withdrawnAt == null || withdrawnWhy == null
                ? null
                : new FlowTestResult.Withdrawal(withdrawnAt, withdrawnBy, withdrawnWhy);
    }
}

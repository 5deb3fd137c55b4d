package freshet.pumps;

import freshet.hydraulics.Curve;
import jakarta.persistence.CollectionTable;
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
import jakarta.persistence.Version;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The row of a model with the rows of its curve. */
@Entity
@Table(name = "pump_model")
class StoredModel {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    private String name = "";

    @Enumerated(EnumType.STRING)
    private PumpKind kind = PumpKind.UTILITY_SUBMERSIBLE;

    @Enumerated(EnumType.STRING)
    private Drive drive = Drive.SINGLE_PHASE;

    private boolean hasFloat;

    /** Hibernate reads an embedded record of nothing but nulls as null. */
    @Embedded
    private @Nullable Ratings ratings;

    @Enumerated(EnumType.STRING)
    private CurveForm curveForm = CurveForm.TABLE;

    @ElementCollection
    @CollectionTable(name = "curve_point", joinColumns = @JoinColumn(name = "model_id"))
    @OrderColumn(name = "ordinal")
    private List<CurvePoint> points = new ArrayList<>();

    private double curveUncertainty;
    private @Nullable String curveSource;
    private @Nullable String note;

    @Version
    private int version;

    void become(ModelDraft draft) {
        name = draft.name();
        kind = draft.kind();
        drive = draft.drive();
        hasFloat = draft.hasFloat();
        ratings = draft.ratings();
        curveForm = draft.curveForm();
        curveUncertainty = draft.curveUncertainty();
        curveSource = draft.curveSource();
        note = draft.note();
        // an untouched collection stays clean, so that the same data is no change
        if (!List.copyOf(points).equals(draft.points())) {
            points.clear();
            points.addAll(draft.points());
        }
    }

    boolean isLike(ModelDraft draft) {
        return draft.equals(seen().draft());
    }

    int version() {
        return version;
    }

    Model seen() {
        List<CurvePoint> given = List.copyOf(points);
        return new Model(
                Objects.requireNonNull(id),
                name,
                kind,
                drive,
                hasFloat,
                ratings == null ? Ratings.NONE : ratings,
                curveForm,
                given,
                curve(curveForm, given),
                curveUncertainty,
                curveSource,
                note,
                version);
    }

    static Curve curve(CurveForm form, List<CurvePoint> points) {
        return form == CurveForm.TWO_PARAMETER
                ? Curve.parabola(points.get(0).headM(), points.get(1).flowM3h())
                : Curve.of(points.stream()
                        .map(point -> new Curve.Point(point.flowM3h(), point.headM()))
                        .toList());
    }
}

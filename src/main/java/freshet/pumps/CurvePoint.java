package freshet.pumps;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;

/** One point of a rated curve as its sheet gives it. */
@Embeddable
public record CurvePoint(
        @Column(name = "flow_m3h") double flowM3h,
        @Column(name = "head_m") double headM) {}

package freshet.pumps;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import org.jspecify.annotations.Nullable;

/** A hose, adapter or other piece that goes out with a unit, in flow order from the pump; an adapter has a second bore. */
@Embeddable
public record KitItem(
        @Enumerated(EnumType.STRING) KitKind kind,
        String description,
        @Column(name = "bore_mm") @Nullable Double boreMm,
        @Column(name = "outlet_bore_mm") @Nullable Double outletBoreMm,
        @Column(name = "length_m") @Nullable Double lengthM,
        int quantity) {}

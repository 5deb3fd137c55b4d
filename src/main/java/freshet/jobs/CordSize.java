package freshet.jobs;

import freshet.hydraulics.CordDrop;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Sizes of cords, by American wire gauge and by square millimetres (IEC 60228, from memory). */
enum CordSize {
    AWG_18(18),
    AWG_16(16),
    AWG_14(14),
    AWG_12(12),
    AWG_10(10),
    AWG_8(8),
    MM2_0_75(0.75),
    MM2_1(1.0),
    MM2_1_5(1.5),
    MM2_2_5(2.5),
    MM2_4(4.0),
    MM2_6(6.0),
    MM2_10(10.0);

    private final double mm2;
    private final boolean gauge;

    CordSize(int awg) {
        this.mm2 = CordDrop.awgMm2(awg);
        this.gauge = true;
    }

    CordSize(double mm2) {
        this.mm2 = mm2;
        this.gauge = false;
    }

    /** Copper section of one conductor, mm². */
    double mm2() {
        return mm2;
    }

    static @Nullable CordSize named(@Nullable String name) {
        return Arrays.stream(values())
                .filter(size -> size.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    /** The thinnest of the same series with at least this section, mm². */
    Optional<CordSize> atLeast(double wantedMm2) {
        return Arrays.stream(values())
                .filter(size -> size.gauge == gauge && size.mm2 >= wantedMm2)
                .min(Comparator.comparingDouble(CordSize::mm2));
    }
}

package freshet.tags;

import java.util.Locale;

/** What labels are printed on: sheets cut into plain sizes of our own, and rolls with one label a page. All lengths in mm. */
public enum LabelSheet {
    A4_8(210, 297, 2, 4, 95, 65),
    A4_24(210, 297, 3, 8, 60, 34),
    A4_40(210, 297, 4, 10, 45, 27),
    LETTER_8(215.9, 279.4, 2, 4, 101.6, 63.5),
    LETTER_24(215.9, 279.4, 3, 8, 63.5, 31.75),
    LETTER_40(215.9, 279.4, 4, 10, 44.45, 25.4),
    MM_100X50(100, 50, 1, 1, 100, 50),
    MM_60X40(60, 40, 1, 1, 60, 40),
    MM_50X30(50, 30, 1, 1, 50, 30),
    IN_4X2(101.6, 50.8, 1, 1, 101.6, 50.8),
    IN_2X1(50.8, 25.4, 1, 1, 50.8, 25.4);

    private final double pageWidthMm;
    private final double pageHeightMm;
    private final int columns;
    private final int rows;
    private final double labelWidthMm;
    private final double labelHeightMm;

    LabelSheet(
            double pageWidthMm, double pageHeightMm, int columns, int rows, double labelWidthMm, double labelHeightMm) {
        this.pageWidthMm = pageWidthMm;
        this.pageHeightMm = pageHeightMm;
        this.columns = columns;
        this.rows = rows;
        this.labelWidthMm = labelWidthMm;
        this.labelHeightMm = labelHeightMm;
    }

    public double pageWidthMm() {
        return pageWidthMm;
    }

    public double pageHeightMm() {
        return pageHeightMm;
    }

    public double labelWidthMm() {
        return labelWidthMm;
    }

    public double labelHeightMm() {
        return labelHeightMm;
    }

    /** How many labels one page holds. */
    public int places() {
        return columns * rows;
    }

    /** The class of the style sheet that holds the same sizes. */
    public String style() {
        return "on-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

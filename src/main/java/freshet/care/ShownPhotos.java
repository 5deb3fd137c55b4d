package freshet.care;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The photos of one line of a record, as found beside as left; {@code about} is its question, null for the work as a whole. */
record ShownPhotos(@Nullable String about, List<RecordPhoto> found, List<RecordPhoto> left) {

    /** In the order of the lines, the work as a whole last. */
    static List<ShownPhotos> of(ServiceRecord record) {
        List<ShownPhotos> shown = new ArrayList<>();
        for (RecordLine line : record.lines()) {
            if (line.checkLineId() != null) {
                add(shown, record, line.checkLineId(), line.question());
            }
        }
        add(shown, record, null, null);
        return shown;
    }

    private static void add(
            List<ShownPhotos> shown, ServiceRecord record, @Nullable Long lineId, @Nullable String about) {
        ShownPhotos here = new ShownPhotos(about, at(record, lineId, Moment.FOUND), at(record, lineId, Moment.LEFT));
        if (!here.found().isEmpty() || !here.left().isEmpty()) {
            shown.add(here);
        }
    }

    private static List<RecordPhoto> at(ServiceRecord record, @Nullable Long lineId, Moment moment) {
        return record.photos().stream()
                .filter(photo -> Objects.equals(photo.place().lineId(), lineId)
                        && photo.place().moment() == moment)
                .toList();
    }
}

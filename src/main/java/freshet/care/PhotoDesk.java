package freshet.care;

import freshet.checklists.Checklist;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.photos.Photos;
import freshet.photos.SentPhoto;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;

/** Where photos are laid beside the lines of a task, and followed into its record. */
@Component
class PhotoDesk {

    private final PhotoTable table;
    private final Photos photos;
    private final Desk desk;
    private final Clock clock;

    PhotoDesk(PhotoTable table, Photos photos, Desk desk, Clock clock) {
        this.table = table;
        this.photos = photos;
        this.desk = desk;
        this.clock = clock;
    }

    /** Each where its field says; what is no photo is refused at its field. */
    void add(long taskId, List<SentPhoto> sent, Person by) {
        List<Long> lineIds = sent.stream()
                .flatMap(photo -> PhotoPlace.lineId(photo.field()).stream())
                .toList();
        Checklist checklist = desk.checklistOf(desk.openTask(taskId), lineIds);
        for (SentPhoto photo : sent) {
            PhotoPlace place = PhotoPlace.of(photo.field(), checklist)
                    .orElseThrow(() -> new NotFound("place for a photo", photo.field()));
            table.add(taskId, place, photos.keep(photo, by), by, clock.instant());
        }
    }

    void add(long taskId, PhotoPlace place, long photoId, Person by) {
        desk.openTask(taskId);
        table.add(taskId, place, photos.photo(photoId).id(), by, clock.instant());
    }

    void remove(long taskId, long id) {
        desk.openTask(taskId);
        if (!table.remove(taskId, id)) {
            throw new NotFound("photo of task " + taskId, id);
        }
    }

    /** Whether the photos of these records are, byte for byte, those that were signed. */
    boolean unchanged(Collection<ServiceRecord> records) {
        List<RecordPhoto> signed =
                records.stream().flatMap(record -> record.photos().stream()).toList();
        if (signed.isEmpty()) {
            return true;
        }
        Map<Long, String> now = photos.fingerprints(
                signed.stream().map(RecordPhoto::photoId).distinct().toList());
        return signed.stream().allMatch(photo -> photo.sha256().equals(now.get(photo.photoId())));
    }
}

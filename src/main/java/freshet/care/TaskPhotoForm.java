package freshet.care;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.photos.SentPhoto;
import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** What the page of a task does with photos: lays down those that came with it, and takes out the one that was pressed. */
@Component
class TaskPhotoForm {

    private static final String OUT = "photo-out-";

    private final Care care;

    TaskPhotoForm(Care care) {
        this.care = care;
    }

    /** Lays down every photo that is one, for a browser cannot be given its choice again; then refuses the others at their fields. */
    void take(long taskId, HttpServletRequest request, Person me) {
        List<Wrong> wrongs = new ArrayList<>();
        for (SentPhoto photo : SentPhoto.in(request, PhotoPlace.PREFIX)) {
            try {
                care.addPhotos(taskId, List.of(photo), me);
            } catch (Refused refused) {
                wrongs.addAll(refused.wrongs());
            }
        }
        Refused.ifAny(wrongs);
    }

    /** Takes a photo out if that was pressed, and gives the place on the page where it was. */
    String takeOut(long taskId, String press) {
        Optional<TaskPhoto> out = care.photosOf(taskId).stream()
                .filter(photo -> press.equals(OUT + photo.id()))
                .findFirst();
        out.ifPresent(photo -> care.removePhoto(taskId, photo.id()));
        return out.map(photo -> "#shots-" + photo.place().key()).orElse("");
    }

    void show(long taskId, Model model) {
        model.addAttribute(
                "shots",
                care.photosOf(taskId).stream()
                        .collect(Collectors.groupingBy(photo -> photo.place().key())));
    }
}

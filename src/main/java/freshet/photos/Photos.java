package freshet.photos;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the photos: keeping them, and hanging them on what they show. */
@Service
@Transactional
public class Photos {

    /** A photo may have so many megabytes when it arrives. */
    public static final int MOST_MEGABYTES = 8;

    static final int MOST_BYTES = MOST_MEGABYTES << 20;

    /** The field that a refusal names when the bytes came from none. */
    public static final String FIELD = "photo";

    private static final int LONGEST_CAPTION = 200;

    private final PhotoTable table;
    private final People people;
    private final Clock clock;

    Photos(PhotoTable table, People people, Clock clock) {
        this.table = table;
        this.people = people;
        this.clock = clock;
    }

    /** Keeps a photo that came with a form and gives its id; refuses at its field what is no photo. */
    public long keep(SentPhoto sent, Person by) {
        return keep(sent.bytes(), sent.field(), by);
    }

    /** Keeps a photo and gives its id; the same picture twice is kept once. */
    public long keep(byte[] bytes, Person by) {
        return keep(bytes, FIELD, by);
    }

    private long keep(byte[] bytes, String field, Person by) {
        if (bytes.length > MOST_BYTES) {
            throw Refused.because(field, "photos.tooLarge", MOST_MEGABYTES, bytes.length >> 20);
        }
        try {
            CleanPhoto photo = CleanPhoto.of(bytes);
            return table.keep(photo, SmallPicture.of(photo), sha256(photo.bytes()), by, clock.instant());
        } catch (NotAPhoto no) {
            throw Refused.because(field, no.code(), no.arguments());
        }
    }

    @Transactional(readOnly = true)
    public Photo photo(long id) {
        return table.photo(id).orElseThrow(() -> new NotFound("photo", id));
    }

    /** The photo itself. */
    @Transactional(readOnly = true)
    public PhotoFile file(long id) {
        return table.file(id).orElseThrow(() -> new NotFound("photo", id));
    }

    /** A small picture of it, or the photo itself where there is none. */
    @Transactional(readOnly = true)
    public PhotoFile small(long id) {
        return table.small(id).orElseThrow(() -> new NotFound("photo", id));
    }

    /** The SHA-256 of each photo's bytes as they are kept now, worked out anew, by id. */
    @Transactional(readOnly = true)
    public Map<Long, String> fingerprints(Collection<Long> ids) {
        return table.fingerprints(ids);
    }

    /** Keeps a photo and hangs it on a subject, such as {@code unit:17}; gives the photo's id. */
    public long hang(String subject, SentPhoto sent, @Nullable String caption, Person by) {
        long photoId = keep(sent, by);
        hang(subject, photoId, caption, by);
        return photoId;
    }

    /** Hangs a kept photo on a subject, such as {@code unit:17}; a photo that hangs there already stays as it is. */
    public void hang(String subject, long photoId, @Nullable String caption, Person by) {
        String words = Typed.text(caption);
        if (words != null && words.length() > LONGEST_CAPTION) {
            throw Refused.because("caption", "photos.caption.long", LONGEST_CAPTION);
        }
        if (table.hang(subject, photoId, words, by, clock.instant())) {
            people.note(by, "photo added", subject, "photo " + photoId);
        }
    }

    /** What hangs on a subject, in the order in which it was hung. */
    @Transactional(readOnly = true)
    public List<Hung> on(String subject) {
        return table.on(List.of(subject));
    }

    /** What hangs on any of these subjects, in the order in which it was hung. */
    @Transactional(readOnly = true)
    public List<Hung> on(Collection<String> subjects) {
        return table.on(subjects);
    }

    /** Whoever hung it, or an owner, takes it down again. */
    public static boolean mayTakeDown(Hung hung, Person person) {
        return person.owner() || hung.hungBy() == person.id();
    }

    public void takeDown(String subject, long hungId, Person by) {
        Hung hung = table.hung(subject, hungId).orElseThrow(() -> new NotFound("photo on " + subject, hungId));
        if (!mayTakeDown(hung, by)) {
            throw new NotAllowed("photo " + hung.photoId() + " was hung by another");
        }
        table.takeDown(hungId);
        people.note(by, "photo taken down", subject, "photo " + hung.photoId());
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException every) {
            throw new IllegalStateException("every Java has SHA-256", every);
        }
    }
}

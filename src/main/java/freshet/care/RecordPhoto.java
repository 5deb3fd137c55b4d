package freshet.care;

/** A photo that was signed with a record; {@code sha256} is that of its bytes at the signing. */
public record RecordPhoto(PhotoPlace place, long photoId, String sha256, int width, int height) {

    static RecordPhoto of(TaskPhoto photo) {
        return new RecordPhoto(photo.place(), photo.photoId(), photo.sha256(), photo.width(), photo.height());
    }
}

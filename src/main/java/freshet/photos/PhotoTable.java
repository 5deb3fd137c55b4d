package freshet.photos;

import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of photos, and of what they hang on. */
@Component
class PhotoTable {

    private static final String HUNG = """
            select h.*, p.width, p.height, a.full_name
            from hung_photo h join photo p on p.id = h.photo_id join account a on a.id = h.hung_by
            """;

    private final JdbcClient jdbc;

    PhotoTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps it once: bytes that are kept already keep their row. */
    long keep(CleanPhoto photo, byte @Nullable [] small, String sha256, Person by, Instant now) {
        jdbc.sql("""
                        insert into photo (sha256, media_type, width, height, size, taken_at, kept_by, kept_at, bytes, small)
                        values (:sha256, :type, :width, :height, :size, :taken, :by, :now, :bytes, :small)
                        on conflict (sha256) do nothing""")
                .param("sha256", sha256)
                .param("type", photo.mediaType())
                .param("width", photo.turned() ? photo.height() : photo.width())
                .param("height", photo.turned() ? photo.width() : photo.height())
                .param("size", photo.bytes().length)
                .param(
                        "taken",
                        photo.takenAt() == null ? null : photo.takenAt().atOffset(ZoneOffset.UTC),
                        Types.TIMESTAMP_WITH_TIMEZONE)
                .param("by", by.id())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("bytes", photo.bytes())
                .param("small", small, Types.BINARY)
                .update();
        return jdbc.sql("select id from photo where sha256 = ?")
                .param(sha256)
                .query(Long.class)
                .single();
    }

    Optional<Photo> photo(long id) {
        return jdbc.sql("""
                        select p.id, p.sha256, p.media_type, p.width, p.height, p.size, p.taken_at, p.kept_at, a.full_name
                        from photo p join account a on a.id = p.kept_by where p.id = ?""").param(id).query((row, n) -> photo(row)).optional();
    }

    Optional<PhotoFile> file(long id) {
        return jdbc.sql("select media_type, sha256, bytes from photo where id = ?")
                .param(id)
                .query((row, n) -> new PhotoFile(row.getString(1), row.getString(2), row.getBytes(3)))
                .optional();
    }

    /** The small picture, or the photo itself where there is none. */
    Optional<PhotoFile> small(long id) {
        return jdbc.sql("""
                        select case when small is null then media_type else 'image/jpeg' end, sha256, coalesce(small, bytes)
                        from photo where id = ?""")
                .param(id)
                .query((row, n) -> new PhotoFile(row.getString(1), row.getString(2) + "-small", row.getBytes(3)))
                .optional();
    }

    Map<Long, String> fingerprints(Collection<Long> ids) {
        Map<Long, String> fingerprints = new HashMap<>();
        jdbc.sql("select id, encode(sha256(bytes), 'hex') from photo where id = any(?)")
                .param(ids.toArray(Long[]::new))
                .query(row -> {
                    fingerprints.put(row.getLong(1), row.getString(2));
                });
        return fingerprints;
    }

    boolean hang(String subject, long photoId, @Nullable String caption, Person by, Instant now) {
        return jdbc.sql("""
                        insert into hung_photo (photo_id, subject, caption, hung_by, hung_at)
                        values (:photo, :subject, :caption, :by, :now) on conflict (subject, photo_id) do nothing""")
                        .param("photo", photoId)
                        .param("subject", subject)
                        .param("caption", caption, Types.VARCHAR)
                        .param("by", by.id())
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    Optional<Hung> hung(String subject, long id) {
        return jdbc.sql(HUNG + "where h.subject = ? and h.id = ?")
                .params(subject, id)
                .query((row, n) -> hung(row))
                .optional();
    }

    List<Hung> on(Collection<String> subjects) {
        return jdbc.sql(HUNG + "where h.subject = any(?) order by h.id")
                .param(subjects.toArray(String[]::new))
                .query((row, n) -> hung(row))
                .list();
    }

    void takeDown(long id) {
        jdbc.sql("delete from hung_photo where id = ?").param(id).update();
    }

    private static Photo photo(ResultSet row) throws SQLException {
        OffsetDateTime taken = row.getObject("taken_at", OffsetDateTime.class);
        return new Photo(
                row.getLong("id"),
                row.getString("sha256"),
                row.getString("media_type"),
                row.getInt("width"),
                row.getInt("height"),
                row.getInt("size"),
                taken == null ? null : taken.toInstant(),
                row.getString("full_name"),
                row.getObject("kept_at", OffsetDateTime.class).toInstant());
    }

    private static Hung hung(ResultSet row) throws SQLException {
        return new Hung(
                row.getLong("id"),
                row.getLong("photo_id"),
                row.getString("subject"),
                row.getString("caption"),
                row.getInt("width"),
                row.getInt("height"),
                row.getLong("hung_by"),
                row.getString("full_name"),
                row.getObject("hung_at", OffsetDateTime.class).toInstant());
    }
}

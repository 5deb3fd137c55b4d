package freshet.care;

import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Which photos stand at the lines of tasks, and which were signed with records. */
@Component("photosOfWork")
class PhotoTable {

    private final JdbcClient jdbc;

    PhotoTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** In the order of the lines, the work as a whole last. */
    List<TaskPhoto> ofTask(long taskId) {
        return jdbc.sql("""
                        select t.*, p.sha256, p.width, p.height, a.full_name
                        from task_photo t
                        join photo p on p.id = t.photo_id
                        join account a on a.id = t.added_by
                        left join check_line l on l.id = t.check_line_id
                        where t.task_id = ? order by l.ordinal nulls last, t.moment, t.id""")
                .param(taskId)
                .query((row, n) -> new TaskPhoto(
                        row.getLong("id"),
                        place(row),
                        row.getLong("photo_id"),
                        row.getString("sha256"),
                        row.getInt("width"),
                        row.getInt("height"),
                        row.getString("full_name")))
                .list();
    }

    /** Puts a photo there, once; whoever has photos of a task has begun it. */
    void add(long taskId, PhotoPlace place, long photoId, Person by, Instant now) {
        jdbc.sql("""
                        insert into task_photo (task_id, check_line_id, moment, photo_id, added_by, added_at)
                        values (:task, :line, :moment, :photo, :by, :now)
                        on conflict (task_id, check_line_id, moment, photo_id) do nothing""")
                .param("task", taskId)
                .param("line", place.lineId(), Types.BIGINT)
                .param("moment", place.moment().name())
                .param("photo", photoId)
                .param("by", by.id())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
        jdbc.sql("update task set started_at = coalesce(started_at, ?) where id = ?")
                .params(now.atOffset(ZoneOffset.UTC), taskId)
                .update();
    }

    boolean remove(long taskId, long id) {
        return jdbc.sql("delete from task_photo where task_id = ? and id = ?")
                        .params(taskId, id)
                        .update()
                == 1;
    }

    /** The photos of each record {@code r} whose column has this id, in the order in which they were signed. */
    Map<Long, List<RecordPhoto>> ofRecords(String column, long id) {
        Map<Long, List<RecordPhoto>> photos = new HashMap<>();
        jdbc.sql("""
                        select s.*, p.width, p.height from record_photo s
                        join service_record r on r.id = s.record_id join photo p on p.id = s.photo_id
                        where\s""" + column + " = ? order by s.record_id, s.ordinal")
                .param(id)
                .query(row -> {
                    photos.computeIfAbsent(row.getLong("record_id"), its -> new ArrayList<>())
                            .add(new RecordPhoto(
                                    place(row),
                                    row.getLong("photo_id"),
                                    row.getString("sha256"),
                                    row.getInt("width"),
                                    row.getInt("height")));
                });
        return photos;
    }

    void sign(long recordId, List<RecordPhoto> photos) {
        for (int i = 0; i < photos.size(); i++) {
            RecordPhoto photo = photos.get(i);
            jdbc.sql("""
                            insert into record_photo (record_id, ordinal, check_line_id, moment, photo_id, sha256)
                            values (:record, :ordinal, :line, :moment, :photo, :sha256)""")
                    .param("record", recordId)
                    .param("ordinal", i + 1)
                    .param("line", photo.place().lineId(), Types.BIGINT)
                    .param("moment", photo.place().moment().name())
                    .param("photo", photo.photoId())
                    .param("sha256", photo.sha256())
                    .update();
        }
    }

    private static PhotoPlace place(ResultSet row) throws SQLException {
        return new PhotoPlace(row.getObject("check_line_id", Long.class), Moment.valueOf(row.getString("moment")));
    }
}

package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static freshet.care.CareYard.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.findings.Findings;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.photos.Hung;
import freshet.photos.Photos;
import freshet.photos.Pictures;
import freshet.photos.SentPhoto;
import freshet.pumps.Unit;
import java.awt.Color;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;

/** Photos are laid beside the lines of a task, and what was signed with it stays as it was signed. */
@FreshetTest
class PhotoTests {

    @Autowired
    Care care;

    @Autowired
    Photos photos;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient database;

    @Autowired
    TestClock clock;

    Person teo;
    Unit unit;
    Task opening;
    CheckLine shaft;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        shaft = line(sheet(), "Turn the shaft");
    }

    private Worksheet sheet() {
        return care.worksheet(opening.id());
    }

    private long kept(Color color) {
        return photos.keep(Pictures.jpeg(80, 60, color), teo);
    }

    private long sign(List<Answer> answers) {
        return care.sign(opening.id(), SignOff.of(care.task(opening.id()).version(), answers), teo);
    }

    private static SentPhoto sent(String field, byte[] bytes) {
        return new SentPhoto(field, new MockMultipartFile(field, "p.jpg", "image/jpeg", bytes));
    }

    @Test
    void areSignedWithTheRecordAndStayInItsCorrection() {
        PhotoPlace found = new PhotoPlace(shaft.id(), Moment.FOUND);
        PhotoPlace left = new PhotoPlace(shaft.id(), Moment.LEFT);
        PhotoPlace whole = new PhotoPlace(null, Moment.LEFT);
        care.addPhoto(opening.id(), whole, kept(Color.GREEN), teo);
        care.addPhotos(
                opening.id(),
                List.of(
                        sent(left.field(), Pictures.jpeg(80, 60, Color.WHITE)),
                        sent(found.field(), Pictures.jpeg(80, 60, Color.BLACK)),
                        sent(found.field(), Pictures.jpeg(80, 60, Color.BLACK))),
                teo);
        assertThat(care.photosOf(opening.id())).extracting(TaskPhoto::place).containsExactly(found, left, whole);
        assertThat(care.task(opening.id()).startedAt()).isEqualTo(clock.instant());
        assertThat(care.task(opening.id()).version())
                .as("an open form stays good")
                .isZero();

        long record = sign(
                with(allPass(sheet(), teo), new Answer(shaft.id(), "Scrapes", "Free", "Grit under the plate", null)));
        List<RecordPhoto> signed = care.record(record).photos();
        assertThat(signed).extracting(RecordPhoto::place).containsExactly(found, left, whole);
        assertThat(signed)
                .allSatisfy(photo -> assertThat(photo.sha256())
                        .isEqualTo(photos.photo(photo.photoId()).sha256()));
        assertThat(care.chainHolds(unit.id())).isTrue();
        long finding = findings.findingsOfRecord(record).get(0).id();
        assertThat(photos.on("finding:" + finding))
                .extracting(Hung::photoId)
                .containsExactly(signed.get(0).photoId(), signed.get(1).photoId());

        long correction = care.correct(
                record, new Correction(allPass(sheet(), teo), "It was another pump that scraped", null), teo);
        assertThat(care.record(correction).photos()).isEqualTo(signed);
        assertThat(care.chainHolds(unit.id())).isTrue();
    }

    @Test
    void areTakenOutBeforeTheSigningAndNeverAfter() {
        care.addPhoto(opening.id(), new PhotoPlace(shaft.id(), Moment.FOUND), kept(Color.BLUE), teo);
        care.addPhoto(opening.id(), new PhotoPlace(null, Moment.FOUND), kept(Color.BLUE), teo);
        List<TaskPhoto> laid = care.photosOf(opening.id());
        care.removePhoto(opening.id(), laid.get(0).id());
        assertThatThrownBy(() -> care.removePhoto(opening.id(), laid.get(0).id()))
                .isInstanceOf(NotFound.class);

        long record = sign(allPass(sheet(), teo));
        assertThat(care.record(record).photos()).hasSize(1);
        assertThatThrownBy(() -> care.removePhoto(opening.id(), laid.get(1).id()))
                .isInstanceOf(AlreadySigned.class);
        assertThatThrownBy(() -> care.addPhoto(opening.id(), new PhotoPlace(null, Moment.LEFT), kept(Color.RED), teo))
                .isInstanceOf(AlreadySigned.class);
        for (String change : List.of(
                "update record_photo set moment = 'LEFT' where record_id = ?",
                "delete from record_photo where record_id = ?")) {
            assertThatThrownBy(() -> database.sql(change).param(record).update())
                    .isInstanceOf(DataIntegrityViolationException.class)
                    .hasMessageContaining("never changed");
        }
    }

    @Test
    void areAllKeptOrNone() {
        String field = new PhotoPlace(shaft.id(), Moment.FOUND).field();
        List<SentPhoto> oneWrong =
                List.of(sent(field, Pictures.jpeg(80, 60)), sent("photo-all-left", Pictures.PLACE.getBytes()));
        assertThat(catchThrowableOfType(Refused.class, () -> care.addPhotos(opening.id(), oneWrong, teo))
                        .wrongs())
                .extracting(Refused.Wrong::field, Refused.Wrong::code)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("photo-all-left", "photos.noPhoto"));
        assertThat(care.photosOf(opening.id())).isEmpty();
        assertThat(database.sql("select count(*) from photo").query(Long.class).single())
                .isZero();
        assertThatThrownBy(() -> care.addPhotos(opening.id(), List.of(sent("photo-x", Pictures.jpeg(8, 6))), teo))
                .isInstanceOf(NotFound.class);
        // a line of another version of the checklist: nothing that was photographed is lost
        care.addPhotos(opening.id(), List.of(sent("photo-c0-left", Pictures.jpeg(8, 6))), teo);
        assertThat(care.photosOf(opening.id()))
                .extracting(TaskPhoto::place)
                .containsExactly(new PhotoPlace(null, Moment.LEFT));
    }

    @Test
    void breakTheChainWhenSomebodyTampers() {
        long photo = kept(Color.BLUE);
        long other = kept(Color.CYAN);
        care.addPhoto(opening.id(), new PhotoPlace(shaft.id(), Moment.FOUND), photo, teo);
        long record = sign(allPass(sheet(), teo));
        assertThat(care.chainHolds(unit.id())).isTrue();

        String sha256 = photos.photo(photo).sha256();
        String wrong = photos.photo(other).sha256();
        tamper("record_photo", "update record_photo set sha256 = '" + wrong + "' where record_id = " + record);
        assertThat(care.chainHolds(unit.id())).as("another hash").isFalse();
        tamper("record_photo", "update record_photo set sha256 = '" + sha256 + "' where record_id = " + record);
        assertThat(care.chainHolds(unit.id())).isTrue();
        tamper("record_photo", "update record_photo set moment = 'LEFT' where record_id = " + record);
        assertThat(care.chainHolds(unit.id())).as("another moment").isFalse();
        tamper("record_photo", "update record_photo set moment = 'FOUND' where record_id = " + record);

        // the picture itself, with a hash that fits it
        String swap =
                "update photo p set sha256 = encode(sha256(o.small), 'hex'), bytes = o.small, size = length(o.small)"
                        + " from photo o where p.id = %d and o.id = %d".formatted(photo, other);
        tamper("photo", swap);
        assertThat(care.chainHolds(unit.id())).as("another picture").isFalse();
    }

    private void tamper(String table, String change) {
        database.sql("alter table " + table + " disable trigger user").update();
        try {
            assertThat(database.sql(change).update()).isOne();
        } finally {
            database.sql("alter table " + table + " enable trigger user").update();
        }
    }

    @Test
    void leaveTheDigestOfARecordWithoutAnyAsItWas() {
        long record = sign(allPass(sheet(), teo));
        ServiceRecord signed = care.record(record);
        StringBuilder text = new StringBuilder();
        for (Object value : new Object[] {
            null,
            null,
            signed.taskId(),
            signed.unitId(),
            signed.checklistVersionId(),
            signed.title(),
            signed.tag(),
            signed.serial(),
            signed.place(),
            signed.startedAt(),
            signed.endedAt(),
            signed.signedAt(),
            signed.signedBy(),
            signed.signedName(),
            null,
            null
        }) {
            write(text, value);
        }
        for (RecordLine line : signed.lines()) {
            for (Object value : new Object[] {
                line.ordinal(),
                line.checkLineId(),
                line.section(),
                line.question(),
                line.answer(),
                line.number(),
                line.unit(),
                line.limits(),
                line.verdict(),
                line.asLeft()
            }) {
                write(text, value);
            }
        }
        assertThat(signed.digest())
                .isEqualTo(database.sql("select encode(sha256(convert_to(?, 'UTF8')), 'hex')")
                        .param(text.toString())
                        .query(String.class)
                        .single());
    }

    private static void write(StringBuilder text, Object value) {
        text.append(value == null ? "-" : value.toString().length())
                .append(':')
                .append(value == null ? "" : value)
                .append('\n');
    }
}

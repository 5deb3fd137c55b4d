package freshet.photos;

import static freshet.photos.Pictures.ascii;
import static freshet.photos.Pictures.jpeg;
import static freshet.photos.Pictures.png;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.care.CareYard;
import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;

@FreshetTest
class PhotosTests {

    @Autowired
    Photos photos;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient database;

    Person teo;

    @BeforeEach
    void teo() {
        yard.ilse();
        teo = yard.teo();
    }

    private String refused(byte[] bytes) {
        Refused refused = catchThrowableOfType(Refused.class, () -> photos.keep(bytes, teo));
        assertThat(refused).isNotNull();
        assertThat(rows()).isZero();
        return refused.wrongs().get(0).field() + " " + refused.wrongs().get(0).code();
    }

    private long rows() {
        return database.sql("select count(*) from photo").query(Long.class).single();
    }

    @Test
    void keepsJpegPngAndWebpByTheirContent() {
        Map<byte[], String> kinds = new LinkedHashMap<>();
        kinds.put(jpeg(60, 40), "image/jpeg 60 x 40");
        kinds.put(png(30, 50), "image/png 30 x 50");
        kinds.put(Pictures.WEBP, "image/webp 1 x 1");
        kinds.put(
                java.util.Base64.getDecoder().decode("UklGRiIAAABXRUJQVlA4IBYAAAAwAQCdASoBAAEADsD+JaQAA3AAAAAA"),
                "image/webp 1 x 1");
        kinds.forEach((bytes, said) -> {
            Photo photo = photos.photo(photos.keep(bytes, teo));
            assertThat(photo.mediaType() + " " + photo.width() + " x " + photo.height())
                    .isEqualTo(said);
            assertThat(photo.size()).isEqualTo(photos.file(photo.id()).bytes().length);
            assertThat(photo.keptByName()).isEqualTo("Teo Brandt");
        });
        assertThat(rows()).isEqualTo(4);
    }

    @Test
    void takesOutWhatTheCameraKnewOfThePlace() {
        byte[] sent = Pictures.fromACamera(jpeg(60, 40), 6);
        assertThat(text(sent)).contains(Pictures.PLACE);
        Photo photo = photos.photo(photos.keep(sent, teo));
        byte[] kept = photos.file(photo.id()).bytes();

        assertThat(text(kept)).doesNotContain(Pictures.PLACE, "script", "html", "Photoshop", "2027");
        assertThat(kept).endsWith(0xFF, 0xD9);
        assertThat(photo.takenAt()).isEqualTo(Instant.parse("2027-03-14T14:05:00Z"));
        // the picture itself is the same to the last pixel, and is still turned
        assertThat(pixels(Pictures.read(kept))).isEqualTo(pixels(Pictures.read(jpeg(60, 40))));
        assertThat(Exif.read(kept, text(kept).indexOf("Exif") + 6, kept.length).orientation())
                .isEqualTo(6);
        assertThat(List.of(photo.width(), photo.height())).containsExactly(40, 60);

        byte[] png = photos.file(photos.keep(
                        Pictures.withChunk(
                                Pictures.withChunk(png(9, 9), "eXIf", ascii(Pictures.PLACE)),
                                "tEXt",
                                ascii("Comment\0" + Pictures.PLACE)),
                        teo))
                .bytes();
        assertThat(png).isEqualTo(png(9, 9));
        byte[] webp = photos.file(photos.keep(Pictures.webpWithExif(), teo)).bytes();
        assertThat(text(webp)).startsWith("RIFF").contains("VP8X").doesNotContain(Pictures.PLACE, "EXIF");
        assertThat(webp[20]).as("flags of the extended head").isZero();
        assertThat(ByteBuffer.wrap(webp).order(java.nio.ByteOrder.LITTLE_ENDIAN).getInt(4))
                .isEqualTo(webp.length - 8);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private static int[] pixels(BufferedImage picture) {
        return picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth());
    }

    @Test
    void turnsTheSmallPictureAsItIsSeen() {
        // where the red corner of the upper left is seen, by the turn that EXIF names
        String[] corners = {"left top", "right top", "right bottom", "left bottom"};
        int[] seen = {0, 1, 2, 3, 0, 1, 2, 3};
        for (int turn = 1; turn <= 8; turn++) {
            long id = photos.keep(Pictures.fromACamera(jpeg(1200, 800), turn), teo);
            BufferedImage small = Pictures.read(photos.small(id).bytes());
            assertThat(Math.max(small.getWidth(), small.getHeight())).isEqualTo(480);
            assertThat(small.getWidth() > small.getHeight()).as("turn " + turn).isEqualTo(turn < 5);
            int x = corners[seen[turn - 1]].startsWith("left") ? 20 : small.getWidth() - 20;
            int y = corners[seen[turn - 1]].endsWith("top") ? 20 : small.getHeight() - 20;
            assertThat(new Color(small.getRGB(x, y)).getRed())
                    .as("turn " + turn)
                    .isGreaterThan(200);
            assertThat(new Color(small.getRGB(small.getWidth() - x, y)).getRed())
                    .isLessThan(60);
            assertThat(new Color(small.getRGB(x, small.getHeight() - y)).getRed())
                    .isLessThan(60);
        }
        assertThat(photos.small(photos.keep(Pictures.WEBP, teo)).bytes()).isEqualTo(Pictures.WEBP);
    }

    @Test
    void keepsTheSamePictureOnce() {
        long id = photos.keep(jpeg(60, 40), teo);
        assertThat(photos.keep(jpeg(60, 40), yard.ilse())).isEqualTo(id);
        assertThat(photos.keep(Pictures.fromACamera(jpeg(60, 40), 1), teo)).isEqualTo(id);
        assertThat(photos.photo(id).keptByName()).isEqualTo("Teo Brandt");
        assertThat(photos.keep(jpeg(60, 41), teo)).isNotEqualTo(id);
        assertThat(rows()).isEqualTo(2);
        assertThat(photos.fingerprints(List.of(id)))
                .containsEntry(id, photos.photo(id).sha256());
    }

    @Test
    void refusesWhatIsNoPhotoAndKeepsNothing() {
        byte[] jpeg = jpeg(60, 40);
        assertThat(refused(new byte[0])).isEqualTo("photo photos.noPhoto");
        assertThat(refused(ascii("Just a text"))).isEqualTo("photo photos.noPhoto");
        assertThat(refused(ascii("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>")))
                .isEqualTo("photo photos.noPhoto");
        assertThat(refused(ascii("<html><!--" + text(jpeg) + "-->"))).isEqualTo("photo photos.noPhoto");
        assertThat(refused(ascii("GIF89a<script>"))).isEqualTo("photo photos.noPhoto");
        assertThat(refused(ascii("\0\0\0\u0018ftypheic"))).isEqualTo("photo photos.heic");
        assertThat(refused(Arrays.copyOf(jpeg, jpeg.length / 2))).isEqualTo("photo photos.cut");
        assertThat(refused(Arrays.copyOf(jpeg, jpeg.length - 2))).isEqualTo("photo photos.cut");
        assertThat(refused(Arrays.copyOf(jpeg, 4))).isEqualTo("photo photos.cut");
        assertThat(refused(Arrays.copyOf(png(9, 9), 60))).isEqualTo("photo photos.cut");
        assertThat(refused(Arrays.copyOf(Pictures.WEBP, 30))).isEqualTo("photo photos.cut");
        assertThat(refused(ascii(text(png(9, 9)).replace("IDAT", "IDAX")))).isEqualTo("photo photos.unreadable");
        assertThat(refused(Pictures.bomb(60_000, 60_000))).isEqualTo("photo photos.tooManyPixels");
        assertThat(refused(Pictures.bomb(17_000, 10))).isEqualTo("photo photos.tooManyPixels");
        assertThat(refused(Pictures.bomb(Integer.MAX_VALUE, Integer.MAX_VALUE)))
                .isEqualTo("photo photos.tooManyPixels");
        assertThat(refused(Pictures.bomb(-1, 5))).isEqualTo("photo photos.unreadable");
        assertThat(refused(Arrays.copyOf(jpeg, (8 << 20) + 1))).isEqualTo("photo photos.tooLarge");
    }

    @Test
    void answersEveryBrokenFileWithARefusal() {
        Random random = new Random(17);
        List<byte[]> whole =
                List.of(Pictures.fromACamera(jpeg(24, 16), 6), png(12, 9), Pictures.webpWithExif(), jpeg(24, 16));
        int kept = 0;
        for (int i = 0; i < 600; i++) {
            byte[] broken = whole.get(i % whole.size()).clone();
            for (int change = random.nextInt(4); change >= 0; change--) {
                broken[3 + random.nextInt(broken.length - 3)] = (byte) random.nextInt();
            }
            byte[] sent = i % 3 == 0 ? Arrays.copyOf(broken, random.nextInt(broken.length)) : broken;
            try {
                CleanPhoto photo = CleanPhoto.of(sent);
                SmallPicture.of(photo);
                assertThat(photo.bytes().length).isLessThan(sent.length + 64);
                kept++;
            } catch (NotAPhoto refused) {
                assertThat(refused.code()).startsWith("photos.");
            }
        }
        assertThat(kept).isBetween(60, 580);
    }

    @Test
    void isNeverChangedAndNeverOtherThanItsFingerprint() {
        long id = photos.keep(jpeg(60, 40), teo);
        for (String change :
                List.of("update photo set kept_by = kept_by where id = ?", "delete from photo where id = ?")) {
            assertThatThrownBy(() -> database.sql(change).param(id).update())
                    .isInstanceOf(DataIntegrityViolationException.class)
                    .hasMessageContaining("never changed");
        }
        database.sql("alter table photo disable trigger user").update();
        try {
            assertThatThrownBy(() -> database.sql("update photo set bytes = small, size = length(small) where id = ?")
                            .param(id)
                            .update())
                    .isInstanceOf(DataIntegrityViolationException.class)
                    .hasMessageContaining("photo_check");
        } finally {
            database.sql("alter table photo enable trigger user").update();
        }
    }

    @Test
    void hangsOnWhatItShowsAndIsTakenDownByWhoHungItOrAnOwner() {
        long id = photos.keep(jpeg(60, 40), teo);
        photos.hang("unit:7", id, " The plate ", teo);
        photos.hang("unit:7", id, "Again", teo);
        photos.hang("unit:8", id, null, yard.ilse());
        assertThat(photos.on("unit:7")).singleElement().satisfies(hung -> {
            assertThat(hung.photoId()).isEqualTo(id);
            assertThat(hung.caption()).isEqualTo("The plate");
            assertThat(hung.hungByName()).isEqualTo("Teo Brandt");
        });
        assertThat(photos.on(List.of("unit:7", "unit:8", "unit:9"))).hasSize(2);
        assertThat(catchThrowableOfType(Refused.class, () -> photos.hang("unit:7", id, "x".repeat(201), teo))
                        .wrongs())
                .extracting(Refused.Wrong::field)
                .containsExactly("caption");

        Hung here = photos.on("unit:7").get(0);
        assertThatThrownBy(() -> photos.takeDown("unit:8", here.id(), teo)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> photos.takeDown("unit:7", here.id(), yard.jonah()))
                .isInstanceOf(NotAllowed.class);
        photos.takeDown("unit:7", here.id(), teo);
        assertThat(photos.on("unit:7")).isEmpty();
        assertThat(photos.file(id).bytes()).isNotEmpty();
    }
}

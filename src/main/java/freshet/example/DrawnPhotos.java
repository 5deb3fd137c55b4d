package freshet.example;

import freshet.care.Care;
import freshet.care.Moment;
import freshet.care.PhotoPlace;
import freshet.care.Task;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.photos.Photos;
import freshet.pumps.Pumps;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.Map;
import javax.imageio.ImageIO;

/** The photos of the example yard: none was taken, all are drawn. */
final class DrawnPhotos {

    private static final Color HOUSING = new Color(0x35, 0x5C, 0x6B);
    private static final Color METAL = new Color(0xC9, 0xCE, 0xCB);
    private static final Color DARK = new Color(0x24, 0x2B, 0x2D);
    private static final Color CORE = new Color(0xD9, 0x8A, 0x3A);
    private static final Color BENCH = new Color(0xB9, 0xA4, 0x7E);

    private static final int WIDTH = 1200;
    private static final int HEIGHT = 900;

    private final Photos photos;
    private final Pumps pumps;
    private final Findings findings;
    private final Care care;

    DrawnPhotos(Photos photos, Pumps pumps, Findings findings, Care care) {
        this.photos = photos;
        this.pumps = pumps;
        this.findings = findings;
        this.care = care;
    }

    /** What the worn pump looks like, and its plate as found and as left at the first of its checks that is long past. */
    void ofAPump(Map<String, Person> crew) {
        Person teo = crew.get("teo");
        long worn = pumps.unitTagged("BF-07").orElseThrow().id();
        photos.hang("unit:" + worn, photos.keep(plate(), teo), "Nameplate, on the side of the cord", teo);
        Task first = care.tasksOf(worn).stream()
                .filter(Task::open)
                .filter(task -> task.phase() == Phase.OPENING || task.phase() == Phase.CLOSING)
                .min(Comparator.comparing(Task::dueOn))
                .orElseThrow();
        care.worksheet(first.id()).checklist().lines().stream()
                .filter(CheckLine::asLeft)
                .findFirst()
                .ifPresent(line -> {
                    care.addPhoto(first.id(), new PhotoPlace(line.id(), Moment.FOUND), photos.keep(gap(50), teo), teo);
                    care.addPhoto(first.id(), new PhotoPlace(line.id(), Moment.LEFT), photos.keep(gap(0), teo), teo);
                });
    }

    /** The nick in the cord. */
    void ofAFinding(Map<String, Person> crew) {
        Person teo = crew.get("teo");
        Finding nick = findings.findingsOf(
                        pumps.unitTagged("BF-03").orElseThrow().id())
                .get(0);
        photos.hang("finding:" + nick.id(), photos.keep(cord(), teo), "The nick, a hand's width from the plug", teo);
    }

    private static byte[] plate() {
        BufferedImage picture = ground(HOUSING);
        Graphics2D pen = pen(picture);
        pen.setColor(METAL);
        pen.fillRoundRect(180, 200, 840, 500, 30, 30);
        pen.setColor(DARK);
        pen.fillOval(210, 230, 40, 40);
        pen.fillOval(950, 230, 40, 40);
        pen.fillOval(210, 630, 40, 40);
        pen.fillOval(950, 630, 40, 40);
        pen.fillRect(300, 250, 600, 70);
        for (int row = 0; row < 4; row++) {
            pen.fillRect(300, 370 + 72 * row, 200, 26);
            pen.fillRect(540, 370 + 72 * row, 360 - 60 * (row % 3), 26);
        }
        return jpeg(picture, pen);
    }

    private static byte[] cord() {
        BufferedImage picture = ground(BENCH);
        Graphics2D pen = pen(picture);
        pen.setColor(DARK);
        pen.setStroke(new BasicStroke(110, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        pen.drawArc(-200, 320, 1500, 700, 15, 150);
        pen.fillRoundRect(860, 420, 300, 220, 40, 40);
        pen.setColor(CORE);
        pen.setStroke(new BasicStroke(26));
        pen.drawLine(470, 310, 590, 330);
        pen.setColor(BENCH);
        pen.setStroke(new BasicStroke(14));
        pen.drawLine(450, 280, 610, 290);
        return jpeg(picture, pen);
    }

    /** The impeller over its plate, which is bent by so much. */
    private static byte[] gap(int bent) {
        BufferedImage picture = ground(DARK);
        Graphics2D pen = pen(picture);
        pen.setColor(METAL);
        for (int vane = 0; vane < 6; vane++) {
            pen.fillArc(350, 130, 500, 500, 60 * vane, 34);
        }
        pen.setColor(HOUSING);
        pen.fillOval(540, 320, 120, 120);
        pen.setColor(METAL);
        pen.setStroke(new BasicStroke(36, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        pen.drawPolyline(new int[] {150, 600, 1050}, new int[] {700, 700 + bent, 700}, 3);
        return jpeg(picture, pen);
    }

    private static BufferedImage ground(Color color) {
        BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = picture.createGraphics();
        pen.setColor(color);
        pen.fillRect(0, 0, WIDTH, HEIGHT);
        pen.dispose();
        return picture;
    }

    private static Graphics2D pen(BufferedImage picture) {
        Graphics2D pen = picture.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        return pen;
    }

    private static byte[] jpeg(BufferedImage picture, Graphics2D pen) {
        pen.dispose();
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "jpeg", jpeg);
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return jpeg.toByteArray();
    }
}

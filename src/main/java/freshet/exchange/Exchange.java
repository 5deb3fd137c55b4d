package freshet.exchange;

import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.Readings;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.interceptor.TransactionAspectSupport;

/**
 * The door for files. Files are comma-separated text, one kind in a file, the kind told by the heading; several are taken in
 * together, in the order in which they need each other, all rows or none.
 */
@Service
@Transactional
public class Exchange {

    /** A larger file is not read. */
    public static final int LARGEST_FILE_BYTES = 20 * 1024 * 1024;

    private final Places places;
    private final Pumps pumps;
    private final Readings readings;
    private final People people;
    private final MessageSource messages;

    Exchange(Places places, Pumps pumps, Readings readings, People people, MessageSource messages) {
        this.messages = messages;
        this.places = places;
        this.pumps = pumps;
        this.readings = readings;
        this.people = people;
    }

    /** What taking in these files would do, found by doing it and taking it all back. */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public Preview preview(List<NamedFile> files, Person by) {
        TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
        return goOver(files, by);
    }

    /**
     * Takes in all of these files and tells what that did.
     *
     * @throws ImportRefused when anything in them is wrong; then nothing was taken in
     */
    public Preview takeIn(List<NamedFile> files, Person by) {
        Preview done = goOver(files, by);
        if (!done.clean()) {
            throw new ImportRefused(done);
        }
        if (!done.nothingToDo()) {
            people.note(by, "files taken in", "import", summary(done));
        }
        return done;
    }

    /**
     * Takes in all of these files if that does what was shown before.
     *
     * @param agreed the fingerprint of what was shown
     * @throws ImportRefused when it would do something else by now, or anything is wrong; then nothing was taken in
     */
    public Preview takeIn(List<NamedFile> files, String agreed, Person by) {
        Preview done = takeIn(files, by);
        if (!done.fingerprint().equals(agreed)) {
            throw new ImportRefused(done);
        }
        return done;
    }

    private Preview goOver(List<NamedFile> files, Person by) {
        Names names = new Names(places, pumps);
        Map<FileKind, RowKind<?>> kinds = kinds(names);
        Pass pass = new Pass(names, words(by), by);
        files.forEach(file -> pass.open(file, kinds.values()));
        kinds.values().forEach(pass::go);
        return pass.outcome(files);
    }

    private static String summary(Preview done) {
        return done.sheets().stream()
                .map(sheet -> "%s: %d new, %d changed, %d the same"
                        .formatted(sheet.file(), sheet.added(), sheet.changed(), sheet.same()))
                .collect(Collectors.joining("; "));
    }

    /** Everything of one kind that stands in the register, in the form in which it can be taken in, in the person's units. */
    @Transactional(readOnly = true)
    public byte[] export(FileKind kind, Person reader) {
        return Sheets.written(kinds(new Names(places, pumps)).get(kind), reader.unitSystem());
    }

    /** The words of files as this reader writes them. */
    FileWords words(Person reader) {
        return new FileWords(messages, reader);
    }

    /** The columns that files of a kind may have, in order; of a series of columns only the first. */
    List<Column> columns(FileKind kind) {
        return kinds(new Names(places, pumps)).get(kind).columns().stream()
                .filter(column -> !column.further())
                .toList();
    }

    private Map<FileKind, RowKind<?>> kinds(Names names) {
        Map<FileKind, RowKind<?>> kinds = new EnumMap<>(FileKind.class);
        kinds.put(FileKind.CUSTOMERS, new CustomerRows(places, names));
        kinds.put(FileKind.SITES, new SiteRows(places, names));
        kinds.put(FileKind.POSITIONS, new PositionRows(places, names));
        kinds.put(FileKind.MODELS, new ModelRows(pumps, names));
        kinds.put(FileKind.UNITS, new UnitRows(pumps, names));
        kinds.put(FileKind.KIT, new KitRows(pumps, names));
        kinds.put(FileKind.READINGS, new ReadingRows(readings, names));
        return kinds;
    }
}

package freshet.exchange;

import freshet.exchange.Table.Line;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.DuplicateHeaderMode;
import org.jspecify.annotations.Nullable;

/** Text with commas or semicolons between its cells (RFC 4180): taken apart, and put together. */
final class CsvText {

    private static final char BYTE_ORDER_MARK = '\ufeff';
    /** How every workbook and archive in the zip format begins. */
    private static final String ZIP = "PK\u0003\u0004";

    private static final CSVFormat PLAIN = CSVFormat.DEFAULT
            .builder()
            .setIgnoreEmptyLines(false)
            .setDuplicateHeaderMode(DuplicateHeaderMode.ALLOW_ALL)
            .get();

    private CsvText() {}

    /** The table in a file; null, with the problem said, when there is none in it. */
    static @Nullable Table read(NamedFile file, Consumer<Problem> problems) {
        if (file.content().length > Exchange.LARGEST_FILE_BYTES) {
            problems.accept(
                    Problem.inFile(file.name(), "exchange.file.large", Exchange.LARGEST_FILE_BYTES / (1024 * 1024)));
            return null;
        }
        String text = decoded(file, problems);
        if (text == null) {
            return null;
        }
        List<Line> lines = new ArrayList<>();
        int[] line = {0};
        try (CSVParser parser = CSVParser.parse(
                new StringReader(text),
                PLAIN.builder().setDelimiter(delimiter(text)).get())) {
            Iterator<CSVRecord> records = parser.iterator();
            while (true) {
                // asking for the next record reads it, so where it begins has to be known before
                line[0] = (int) parser.getCurrentLineNumber() + 1;
                if (!records.hasNext()) {
                    break;
                }
                Line next = new Line(line[0], records.next().toList());
                if (!next.blank()) {
                    lines.add(next);
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException quotes) {
            problems.accept(Problem.at(file.name(), line[0], null, "exchange.file.quotes"));
            return null;
        }
        if (lines.isEmpty()) {
            problems.accept(Problem.inFile(file.name(), "exchange.file.empty"));
            return null;
        }
        return new Table(file.name(), lines.get(0), List.copyOf(lines.subList(1, lines.size())));
    }

    private static @Nullable String decoded(NamedFile file, Consumer<Problem> problems) {
        byte[] bytes = file.content();
        if (new String(bytes, 0, Math.min(4, bytes.length), StandardCharsets.ISO_8859_1).equals(ZIP)) {
            problems.accept(Problem.inFile(file.name(), "exchange.file.workbook"));
            return null;
        }
        for (byte each : bytes) {
            if (each == 0) {
                problems.accept(Problem.inFile(file.name(), "exchange.file.binary"));
                return null;
            }
        }
        CharsetDecoder utf8 = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        if (utf8.decode(in, out, true).isError()) {
            int line = 1;
            for (int i = 0; i < in.position(); i++) {
                line += bytes[i] == '\n' ? 1 : 0;
            }
            problems.accept(Problem.at(file.name(), line, null, "exchange.file.encoding"));
            return null;
        }
        String text = out.flip().toString();
        return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    }

    /** The one of comma and semicolon that the first line of writing has more of, outside quotation marks. */
    private static char delimiter(String text) {
        String heading = text.stripLeading().lines().findFirst().orElse("").replaceAll("\"[^\"]*\"?", "");
        long semicolons = heading.chars().filter(each -> each == ';').count();
        long commas = heading.chars().filter(each -> each == ',').count();
        return semicolons > commas ? ';' : ',';
    }

    /** The file of a table, with a byte order mark, by which spreadsheet programs know UTF-8. */
    static byte[] write(List<String> heading, Iterable<List<String>> rows) {
        StringBuilder text = new StringBuilder().append(BYTE_ORDER_MARK);
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(heading);
            for (List<String> row : rows) {
                printer.printRecord(row);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}

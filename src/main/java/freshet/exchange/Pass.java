package freshet.exchange;

import freshet.exchange.Preview.Change;
import freshet.exchange.Preview.Difference;
import freshet.exchange.Preview.Sheet;
import freshet.people.Person;
import freshet.people.Refused;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** One go over some files, within a transaction that may end well only if no problem was found. */
final class Pass {

    private static final Pattern ROW = Pattern.compile("rows\\[(\\d+)]\\.?(.*)");

    private final Names names;
    private final FileWords words;
    private final Person by;
    private final List<Opened> opened = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private final List<Problem> questions = new ArrayList<>();
    private final List<Change> changes = new ArrayList<>();

    Pass(Names names, FileWords words, Person by) {
        this.words = words;
        this.names = names;
        this.by = by;
    }

    /** A file, what it is about, its rows and what became of them. */
    private static final class Opened {
        final String name;

        @Nullable
        RowKind<?> kind;

        List<Row> rows = List.of();
        int added;
        int changed;
        int same;
        int wrong;
        int waiting;

        Opened(String name) {
            this.name = name;
        }

        int place() {
            return kind == null ? -1 : kind.kind().ordinal();
        }

        Sheet sheet() {
            return new Sheet(name, kind == null ? null : kind.kind(), added, changed, same, wrong, waiting);
        }
    }

    /** A row that is new, or changes what stands. */
    private record News<D>(Row row, String key, D said, List<Difference> differences, boolean isNew) {}

    /** Reads a file up to its heading, by which its kind is known. */
    void open(NamedFile file, Collection<RowKind<?>> kinds) {
        NamedFile renamed = new NamedFile(unused(file.name()), file.content());
        Opened next = new Opened(renamed.name());
        opened.add(next);
        Table written = CsvText.read(renamed, problems::add);
        if (written == null) {
            names.unread(null);
            return;
        }
        Table table = words.inEnglish(written, kinds);
        RowKind<?> kind = Heading.kindOf(table, kinds).orElse(null);
        if (kind == null) {
            problems.add(Problem.at(renamed.name(), table.heading().number(), null, "exchange.heading.noKind"));
            names.unread(null);
            return;
        }
        next.kind = kind;
        Heading heading = Heading.of(table, kind, words, problems::add);
        if (heading == null) {
            names.unread(kind.kind());
        } else {
            next.rows = table.lines().stream()
                    .map(line ->
                            new Row(next.name, heading, line, words, by.unitSystem(), problems::add, questions::add))
                    .toList();
        }
    }

    private String unused(String name) {
        String unused = name;
        for (int n = 2; isTaken(unused); n++) {
            unused = name + " (" + n + ")";
        }
        return unused;
    }

    private boolean isTaken(String name) {
        return opened.stream().anyMatch(other -> other.name.equals(name));
    }

    private Opened fileOf(Row row) {
        return opened.stream()
                .filter(file -> file.name.equals(row.file))
                .findFirst()
                .orElseThrow();
    }

    /** Takes in the rows of one kind, after those of the kinds before it. */
    <D> void go(RowKind<D> kind) {
        List<Row> rows = opened.stream()
                .filter(file -> file.kind == kind)
                .flatMap(file -> file.rows.stream())
                .toList();
        if (rows.isEmpty()) {
            return;
        }
        kind.lookThrough(rows);
        List<News<D>> news = read(kind, rows);
        take(kind, news);
        for (News<D> each : news) {
            if (each.isNew()) {
                fileOf(each.row()).added++;
            } else {
                fileOf(each.row()).changed++;
                changes.add(new Change(each.row().file, each.row().line, kind.name(each.row()), each.differences()));
            }
        }
        names.forget(kind.kind());
    }

    private <D> List<News<D>> read(RowKind<D> kind, List<Row> rows) {
        Map<String, D> standing = kind.standing();
        Map<String, Row> seen = new HashMap<>();
        List<News<D>> news = new ArrayList<>();
        for (Row row : rows) {
            String key = kind.key(row);
            if (!row.stands()) {
                leaveOut(kind, row, key);
                continue;
            }
            Row twin = key == null ? null : seen.putIfAbsent(key, row);
            if (twin != null) {
                row.wrong(null, "exchange.twice", kind.name(row), twin.file, String.valueOf(twin.line));
            }
            D before = key == null ? null : standing.get(key);
            D said = kind.read(row, before);
            if (key == null || row.wrong() || row.waiting()) {
                leaveOut(kind, row, twin == null ? key : null);
                continue;
            }
            List<Difference> differences = before == null ? List.of() : kind.differences(before, said, by.unitSystem());
            if (before != null && differences.isEmpty()) {
                fileOf(row).same++;
            } else {
                news.add(new News<>(row, key, said, differences, before == null));
            }
        }
        return news;
    }

    private void leaveOut(RowKind<?> kind, Row row, @Nullable String key) {
        if (row.wrong()) {
            fileOf(row).wrong++;
        } else {
            fileOf(row).waiting++;
        }
        if (key != null) {
            names.notTakenIn(kind.kind(), key);
        }
    }

    /** Hands the rows to the door; what the door refuses is left out and the others are handed in again, to find every problem. */
    private <D> void take(RowKind<D> kind, List<News<D>> news) {
        while (!news.isEmpty()) {
            try {
                kind.take(news.stream().map(News::said).toList(), by);
                return;
            } catch (Refused refused) {
                Set<Integer> left = new HashSet<>();
                for (Refused.Wrong wrong : refused.wrongs()) {
                    Matcher place = ROW.matcher(wrong.field());
                    if (!place.matches()) {
                        throw refused;
                    }
                    int at = Integer.parseInt(place.group(1));
                    Row row = news.get(at).row();
                    String column = kind.column(place.group(2), news.get(at).said());
                    row.wrong(Problem.at(row.file, row.line, column, wrong, isQuestion(wrong)));
                    left.add(at);
                }
                left.forEach(
                        at -> leaveOut(kind, news.get(at).row(), news.get(at).key()));
                news.removeIf(each -> each.row().wrong());
            }
        }
    }

    private static boolean isQuestion(Refused.Wrong wrong) {
        return wrong.code().startsWith("pumps.unusual.");
    }

    /** What came of it all, the files in the order in which they were taken in. */
    Preview outcome(List<NamedFile> files) {
        List<Opened> inOrder =
                opened.stream().sorted(Comparator.comparingInt(Opened::place)).toList();
        List<String> order = inOrder.stream().map(file -> file.name).toList();
        problems.sort(Comparator.<Problem>comparingInt(problem -> order.indexOf(problem.file()))
                .thenComparingInt(problem -> problem.line() == null ? 0 : problem.line()));
        List<Sheet> sheets = inOrder.stream().map(Opened::sheet).toList();
        return new Preview(
                sheets,
                List.copyOf(changes),
                List.copyOf(problems),
                List.copyOf(questions),
                fingerprint(files, sheets));
    }

    private String fingerprint(List<NamedFile> files, List<Sheet> sheets) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            files.forEach(file -> digest.update(file.content()));
            sheets.forEach(sheet -> digest.update(sheet.toString().getBytes(StandardCharsets.UTF_8)));
            changes.forEach(change -> digest.update(change.toString().getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException every) {
            throw new IllegalStateException("every Java has SHA-256", every);
        }
    }
}

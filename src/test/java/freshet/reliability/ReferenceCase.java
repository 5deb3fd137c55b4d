package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.stream.Stream;

/** One published or independently computed case: what is asked, what is expected, how near, and who says so. */
record ReferenceCase(String name, Properties text) {

    private static final Path DIRECTORY = Path.of("src/test/resources/freshet/reliability");

    static Stream<ReferenceCase> all() {
        try (Stream<Path> files = Files.list(DIRECTORY)) {
            return files
                    .filter(file -> file.toString().endsWith(".properties"))
                    .sorted()
                    .map(ReferenceCase::read)
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ReferenceCase read(Path file) {
        Properties text = new Properties();
        try (InputStream in = Files.newInputStream(file)) {
            text.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new ReferenceCase(file.getFileName().toString().replace(".properties", ""), text);
    }

    @Override
    public String toString() {
        return name + " [" + get("mark") + "]";
    }

    String get(String key) {
        String value = text.getProperty(key);
        assertThat(value).as("%s in %s", key, name).isNotNull();
        return value;
    }

    double number(String key) {
        return Double.parseDouble(get(key));
    }

    /** The numbers of a line, or none when the line is not there; "null" becomes null. */
    List<Double> numbers(String key) {
        return words(text.getProperty(key, "")).stream()
                .map(word -> word.equals("null") ? null : (Double) Double.parseDouble(word))
                .toList();
    }

    /** Lines key.0, key.1 and so on, as words. */
    List<List<String>> lines(String key) {
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; text.containsKey(key + "." + i); i++) {
            lines.add(words(get(key + "." + i)));
        }
        return lines;
    }

    private static List<String> words(String line) {
        return line.isBlank() ? List.of() : List.of(line.trim().split("\\s+"));
    }

    boolean hasData() {
        return text.containsKey("data");
    }

    /** A column of the data file named in the case, the rows of data.where only. */
    List<String> column(String key) {
        String column = get(key).split("=")[0];
        return rows().stream().map(row -> row.get(column)).toList();
    }

    List<Double> numberColumn(String key) {
        return column(key).stream().map(Double::valueOf).toList();
    }

    /** For "status=2": true in the rows whose status is 2. */
    List<Boolean> flags(String key) {
        String wanted = get(key).split("=")[1];
        return column(key).stream().map(wanted::equals).toList();
    }

    private List<Map<String, String>> rows() {
        try (Stream<String> lines = Files.lines(DIRECTORY.resolve(get("data")), StandardCharsets.UTF_8)) {
            List<String> all = lines.filter(line -> !line.startsWith("#")).toList();
            String[] header = all.get(0).split(",");
            List<Map<String, String>> rows = new ArrayList<>();
            for (String line : all.subList(1, all.size())) {
                String[] cells = line.split(",");
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < header.length; i++) {
                    row.put(header[i], cells[i]);
                }
                String[] where = text.getProperty("data.where", "").split("=");
                if (where.length < 2 || row.get(where[0]).equals(where[1])) {
                    rows.add(row);
                }
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Holds every expected line against the answer; a dash stands for a number that the source does not give. */
    void check(Object answer) {
        Map<String, List<Object>> got = flat(answer);
        List<String> expected = text.stringPropertyNames().stream()
                .filter(key -> key.startsWith("expected."))
                .sorted()
                .toList();
        assertThat(expected).as("expected lines of %s", name).isNotEmpty();
        for (String key : expected) {
            String path = key.substring("expected.".length());
            List<Object> values = got.getOrDefault(path, Arrays.asList((Object) null));
            List<String> wanted = words(get(key));
            assertThat(values).as("%s of %s", path, name).hasSameSizeAs(wanted);
            for (int i = 0; i < wanted.size(); i++) {
                checkOne(path, wanted.get(i), values.get(i));
            }
        }
    }

    private void checkOne(String path, String wanted, Object got) {
        String what = path + " of " + name + " (" + get("source") + ")";
        if (wanted.equals("null")) {
            assertThat(got).as(what).isNull();
        } else if (got instanceof Number number && !wanted.equals("-")) {
            double value = Double.parseDouble(wanted);
            double relative = Double.parseDouble(text.getProperty("tolerance." + path, get("tolerance.relative")));
            double near = Math.max(number("tolerance.absolute"), relative * Math.abs(value));
            assertThat(number.doubleValue()).as(what).isCloseTo(value, within(near));
        } else if (!wanted.equals("-")) {
            assertThat(String.valueOf(got)).as(what).isEqualTo(wanted);
        }
    }

    /** All numbers of an answer by their path; the entries of a list stand behind one another under one path. */
    static Map<String, List<Object>> flat(Object answer) {
        Map<String, List<Object>> flat = new LinkedHashMap<>();
        flatten("", answer, flat);
        return flat;
    }

    private static void flatten(String path, Object value, Map<String, List<Object>> into) {
        if (value instanceof Map<?, ?> map) {
            map.forEach((key, part) -> flatten(key.toString(), part, into));
        } else if (value instanceof List<?> list) {
            list.forEach(part -> flatten(path, part, into));
        } else if (value instanceof Record record) {
            for (RecordComponent component : record.getClass().getRecordComponents()) {
                try {
                    component.getAccessor().setAccessible(true);
                    Object part = component.getAccessor().invoke(record);
                    flatten(path.isEmpty() ? component.getName() : path + "." + component.getName(), part, into);
                } catch (ReflectiveOperationException e) {
                    throw new IllegalStateException(e);
                }
            }
        } else {
            into.computeIfAbsent(path, key -> new ArrayList<>()).add(value);
        }
    }
}

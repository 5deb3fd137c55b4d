package freshet.board;

import freshet.measures.Show;
import freshet.phrases.Phrases;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Why work is due: the name of a message and what it is filled with, so that it is worded when it is read. Days are kept as 2026-03-14. */
public record Why(String name, List<String> args) {

    /** Words that somebody wrote. */
    public static final String WORDS = "words";

    private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

    public static Why of(String name, Object... args) {
        return new Why(name, List.of(args).stream().map(String::valueOf).toList());
    }

    /** Of the columns of a task, its older one for words among them; null when nothing is said. */
    public static @Nullable Why of(ResultSet row) throws SQLException {
        String code = row.getString("why_code");
        String words = row.getString("why");
        if (code == null) {
            return words == null ? null : of(WORDS, words);
        }
        return new Why(code, List.of((String[]) row.getArray("why_args").getArray()));
    }

    /** A number without more digits than it has. */
    static String plain(double value) {
        return BigDecimal.valueOf(value)
                .setScale(3, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** The key of its message. */
    public String code() {
        return "board.why." + name;
    }

    /** What its message is filled with, in the reader's way. */
    public Object[] arguments(Show show) {
        return args.stream().map(arg -> argument(arg, show)).toArray();
    }

    private static Object argument(String arg, Show show) {
        if (DAY.matcher(arg).matches()) {
            return show.date(LocalDate.parse(arg));
        }
        return NUMBER.matcher(arg).matches() ? (Object) new BigDecimal(arg) : Phrases.said(show.locale(), arg);
    }
}

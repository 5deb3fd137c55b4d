package freshet.rounds;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A task as somebody saw and chose it; {@code version} and {@code assignedTo} (0 is nobody) are what stood there then, {@code version}
 * null asks nothing. Forms carry it as {@code 17-3-0}.
 */
public record Chosen(long taskId, @Nullable Integer version, long assignedTo) {

    public static Chosen task(long taskId) {
        return new Chosen(taskId, null, 0);
    }

    /** What the boxes of a form sent; anything that no page of ours sends is passed over. */
    static List<Chosen> read(@Nullable List<String> sent) {
        List<Chosen> chosen = new ArrayList<>();
        for (String each : sent == null ? List.<String>of() : sent) {
            if (each != null && each.matches("\\d{1,15}-\\d{1,9}-\\d{1,15}")) {
                String[] parts = each.split("-");
                Chosen one = new Chosen(Long.parseLong(parts[0]), Integer.valueOf(parts[1]), Long.parseLong(parts[2]));
                if (chosen.stream().noneMatch(other -> other.taskId() == one.taskId())) {
                    chosen.add(one);
                }
            }
        }
        return chosen;
    }

    @Override
    public String toString() {
        return taskId + "-" + version + "-" + assignedTo;
    }
}

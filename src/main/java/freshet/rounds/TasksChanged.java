package freshet.rounds;

import java.util.List;

/** Some of the chosen tasks are no longer as they were chosen, so that nothing was done with any of them. */
public final class TasksChanged extends RuntimeException {

    private final transient List<ChangedTask> tasks;

    TasksChanged(List<ChangedTask> tasks) {
        super(tasks.toString());
        this.tasks = List.copyOf(tasks);
    }

    public List<ChangedTask> tasks() {
        return tasks;
    }
}

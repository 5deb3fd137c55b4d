package freshet.board;

import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Plans everything at a start. */
@DisallowConcurrentExecution
class PlanJob implements Job {

    private final Board board;

    PlanJob(Board board) {
        this.board = board;
    }

    @Override
    public void execute(JobExecutionContext context) {
        board.plan();
    }
}

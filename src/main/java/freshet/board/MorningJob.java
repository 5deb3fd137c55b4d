package freshet.board;

import freshet.timetable.Run;
import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Plans the sites of one time zone in their morning. */
@DisallowConcurrentExecution
class MorningJob implements Job {

    private final Board board;

    MorningJob(Board board) {
        this.board = board;
    }

    @Override
    public void execute(JobExecutionContext context) {
        board.planZone(Run.zone(context));
    }
}

package freshet.timetable;

import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Draws the timetable up by the clock. */
@DisallowConcurrentExecution
class DrawUpJob implements Job {

    private final Timetable timetable;

    DrawUpJob(Timetable timetable) {
        this.timetable = timetable;
    }

    @Override
    public void execute(JobExecutionContext context) {
        timetable.drawUp();
    }
}

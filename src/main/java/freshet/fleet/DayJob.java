package freshet.fleet;

import freshet.timetable.Run;
import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Turns the day for the sites of one time zone. */
@DisallowConcurrentExecution
class DayJob implements Job {

    private final Fleet fleet;

    DayJob(Fleet fleet) {
        this.fleet = fleet;
    }

    @Override
    public void execute(JobExecutionContext context) {
        fleet.turnDay(Run.zone(context));
    }
}

package freshet.notices;

import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Goes round by the clock. */
@DisallowConcurrentExecution
class RoundJob implements Job {

    private final Notices notices;

    RoundJob(Notices notices) {
        this.notices = notices;
    }

    @Override
    public void execute(JobExecutionContext context) {
        notices.goRound();
    }
}

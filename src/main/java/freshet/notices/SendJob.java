package freshet.notices;

import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Sends by the clock. */
@DisallowConcurrentExecution
class SendJob implements Job {

    private final Notices notices;

    SendJob(Notices notices) {
        this.notices = notices;
    }

    @Override
    public void execute(JobExecutionContext context) {
        notices.sendAll();
    }
}

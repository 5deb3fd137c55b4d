package freshet.care;

import org.quartz.DisallowConcurrentExecution;
import org.quartz.Job;
import org.quartz.JobExecutionContext;

/** Plans by the clock. */
@DisallowConcurrentExecution
class PlanJob implements Job {

    private final Care care;

    PlanJob(Care care) {
        this.care = care;
    }

    @Override
    public void execute(JobExecutionContext context) {
        care.plan();
    }
}

package freshet.timetable;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.quartz.JobDataMap;
import org.quartz.JobExecutionContext;
import org.quartz.JobExecutionException;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.listeners.JobListenerSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;

/** Writes down how each run went, of whichever room; whether it could be written down never decides whether it runs. */
class RunListener extends JobListenerSupport {

    private static final Logger LOG = LoggerFactory.getLogger(RunListener.class);

    private final RunTable table;

    RunListener(RunTable table) {
        this.table = table;
    }

    @Override
    public String getName() {
        return "timetable";
    }

    @Override
    public void jobToBeExecuted(JobExecutionContext context) {
        try {
            table.began(key(context), dueAt(context), context.getScheduler().getSchedulerInstanceId());
        } catch (DataAccessException | SchedulerException unwritten) {
            LOG.warn("the beginning of {} was not written down", key(context), unwritten);
        }
    }

    @Override
    public void jobWasExecuted(JobExecutionContext context, @Nullable JobExecutionException failure) {
        try {
            table.ended(key(context), failure == null ? null : Trouble.of(failure));
        } catch (DataAccessException unwritten) {
            LOG.warn("the end of {} was not written down", key(context), unwritten);
        }
    }

    private static RunTable.Key key(JobExecutionContext context) {
        String zone = context.getMergedJobDataMap().getString(Run.ZONE);
        return RunTable.Key.of(context.getJobDetail().getKey(), zone == null ? "" : zone);
    }

    /** When it was due; of a run that is done again, when it was due the first time. */
    private static Instant dueAt(JobExecutionContext context) {
        JobDataMap data = context.getMergedJobDataMap();
        String first = data.getString(Scheduler.FAILED_JOB_ORIGINAL_TRIGGER_SCHEDULED_FIRETIME_IN_MILLISECONDS);
        return context.isRecovering() && first != null
                ? Instant.ofEpochMilli(Long.parseLong(first))
                : context.getScheduledFireTime().toInstant();
    }
}

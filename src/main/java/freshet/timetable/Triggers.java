package freshet.timetable;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.Comparator;
import java.util.Date;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.quartz.CronTrigger;
import org.quartz.JobDetail;
import org.quartz.JobKey;
import org.quartz.ObjectAlreadyExistsException;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.SimpleScheduleBuilder;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;
import org.quartz.TriggerKey;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/** The scheduler's triggers; always within a transaction of the door, for the scheduler's own locks last as long as that. */
@Component
class Triggers {

    private static final String ASKED = "asked";

    private final Scheduler scheduler;
    private final List<JobDetail> runs;
    private final List<LocalRun> localRuns;
    private final List<CronTrigger> fixed;

    Triggers(Scheduler scheduler, List<JobDetail> runs, List<LocalRun> localRuns, ObjectProvider<Trigger> declared) {
        this.scheduler = scheduler;
        this.runs = runs;
        this.localRuns = localRuns;
        this.fixed = declared.stream()
                .filter(CronTrigger.class::isInstance)
                .map(CronTrigger.class::cast)
                .toList();
    }

    /** All that runs by itself, by room and name. */
    List<JobDetail> runs() {
        return runs.stream().sorted(Comparator.comparing(JobDetail::getKey)).toList();
    }

    boolean local(JobKey run) {
        return localRuns.stream().anyMatch(each -> each.run().getKey().equals(run));
    }

    /**
     * Makes the stored triggers those that are declared, for these zones. One that stands as it should is not touched, and a new one never
     * begins in the past: either would fire a second time.
     */
    void agreeWith(Collection<ZoneId> zones) throws SchedulerException {
        Map<TriggerKey, CronTrigger> wanted = new HashMap<>();
        fixed.forEach(trigger -> wanted.put(trigger.getKey(), trigger));
        localRuns.forEach(run -> zones.forEach(zone -> {
            CronTrigger trigger = run.in(zone);
            wanted.put(trigger.getKey(), trigger);
        }));
        for (JobDetail run : runs) {
            for (Trigger stored : scheduler.getTriggersOfJob(run.getKey())) {
                if (stored instanceof CronTrigger && !wanted.containsKey(stored.getKey())) {
                    scheduler.unscheduleJob(stored.getKey());
                }
            }
        }
        for (CronTrigger trigger : wanted.values()) {
            Trigger stored = scheduler.getTrigger(trigger.getKey());
            if (stored == null) {
                schedule(fromNowOn(trigger));
            } else if (!same(stored, trigger)) {
                scheduler.rescheduleJob(stored.getKey(), fromNowOn(trigger));
            }
        }
    }

    private static Trigger fromNowOn(CronTrigger trigger) {
        return trigger.getTriggerBuilder().startNow().build();
    }

    private static boolean same(Trigger stored, CronTrigger wanted) {
        return stored instanceof CronTrigger cron
                && cron.getCronExpression().equals(wanted.getCronExpression())
                && cron.getTimeZone().getID().equals(wanted.getTimeZone().getID())
                && cron.getMisfireInstruction() == wanted.getMisfireInstruction()
                && cron.getJobKey().equals(wanted.getJobKey());
    }

    /** Has a run begin as soon as a node is free; asked again before that, it is still once. */
    void ask(JobKey run, String zone) throws SchedulerException {
        schedule(TriggerBuilder.newTrigger()
                .withIdentity(asked(run, zone))
                .forJob(run)
                .usingJobData(Run.ZONE, zone)
                .startNow()
                .withSchedule(SimpleScheduleBuilder.simpleSchedule().withMisfireHandlingInstructionFireNow())
                .build());
    }

    private void schedule(Trigger trigger) throws SchedulerException {
        try {
            scheduler.scheduleJob(trigger);
        } catch (ObjectAlreadyExistsException already) {
            // another node, or another press, was first
        }
    }

    boolean waits(JobKey run, String zone) throws SchedulerException {
        return scheduler.checkExists(asked(run, zone));
    }

    /** When a run comes next by its own times; empty when only a start or a press makes it run. */
    Optional<Instant> next(JobKey run, String zone) throws SchedulerException {
        return scheduler.getTriggersOfJob(run).stream()
                .filter(CronTrigger.class::isInstance)
                .filter(trigger ->
                        zone.isEmpty() || zone.equals(trigger.getJobDataMap().getString(Run.ZONE)))
                .map(Trigger::getNextFireTime)
                .filter(Objects::nonNull)
                .map(Date::toInstant)
                .min(Comparator.naturalOrder());
    }

    private static TriggerKey asked(JobKey run, String zone) {
        return TriggerKey.triggerKey((run + " " + zone).strip(), ASKED);
    }
}

package freshet.notices;

import org.quartz.CronScheduleBuilder;
import org.quartz.Job;
import org.quartz.JobBuilder;
import org.quartz.JobDetail;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * When notices work: a round every quarter of an hour, because somewhere a full hour begins at each of them, and sending every minute.
 * A missed run is made up once, however many were missed: either looks at what is owed then.
 */
@Configuration(proxyBeanMethods = false)
class NoticesSchedule {

    private static final String GROUP = "notices";

    @Bean
    JobDetail goRound() {
        return job(RoundJob.class, "round");
    }

    @Bean
    Trigger goRoundQuarterly(JobDetail goRound) {
        return trigger(goRound, "10 0/15 * * * ?");
    }

    @Bean
    JobDetail sendMail() {
        return job(SendJob.class, "send");
    }

    @Bean
    Trigger sendMailMinutely(JobDetail sendMail) {
        return trigger(sendMail, "40 * * * * ?");
    }

    private static JobDetail job(Class<? extends Job> type, String name) {
        return JobBuilder.newJob(type)
                .withIdentity(name, GROUP)
                .storeDurably()
                .requestRecovery()
                .build();
    }

    private static Trigger trigger(JobDetail job, String times) {
        return TriggerBuilder.newTrigger()
                .withIdentity(job.getKey().getName(), GROUP)
                .forJob(job)
                .withSchedule(CronScheduleBuilder.cronSchedule(times).withMisfireHandlingInstructionFireAndProceed())
                .build();
    }
}

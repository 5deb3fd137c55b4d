package freshet.board;

import org.quartz.CronScheduleBuilder;
import org.quartz.JobBuilder;
import org.quartz.JobDetail;
import org.quartz.SimpleScheduleBuilder;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * When planning runs: at every start, for what was missed while nothing ran, and every hour, because somewhere among the sites a day
 * begins at every hour. A missed run is made up once.
 */
@Configuration(proxyBeanMethods = false)
class PlanSchedule {

    @Bean
    JobDetail planBoard() {
        return JobBuilder.newJob(PlanJob.class)
                .withIdentity("plan", "board")
                .storeDurably()
                .requestRecovery()
                .build();
    }

    @Bean
    Trigger planAtStart(JobDetail planBoard) {
        return TriggerBuilder.newTrigger()
                .withIdentity("at-start", "board")
                .forJob(planBoard)
                .startNow()
                .withSchedule(SimpleScheduleBuilder.simpleSchedule().withMisfireHandlingInstructionFireNow())
                .build();
    }

    @Bean
    Trigger planHourly(JobDetail planBoard) {
        return TriggerBuilder.newTrigger()
                .withIdentity("hourly", "board")
                .forJob(planBoard)
                .withSchedule(
                        CronScheduleBuilder.cronSchedule("0 4 * * * ?").withMisfireHandlingInstructionFireAndProceed())
                .build();
    }
}

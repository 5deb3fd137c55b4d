package freshet.timetable;

import org.quartz.JobDetail;
import org.quartz.Trigger;
import org.springframework.boot.quartz.autoconfigure.SchedulerFactoryBeanCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * When the timetable itself is drawn up: at every start and every hour. So a new zone has its times before its next night, and what
 * falls due on the day of a change is planned by the change itself; and what failed is tried again within the hour.
 */
@Configuration(proxyBeanMethods = false)
class TimetableSchedule {

    @Bean
    SchedulerFactoryBeanCustomizer writesRunsDown(RunTable table) {
        return scheduler -> scheduler.setGlobalJobListeners(new RunListener(table));
    }

    @Bean
    JobDetail drawUp() {
        return Run.of("timetable", "draw-up", DrawUpJob.class);
    }

    @Bean
    Trigger drawUpAtStart(JobDetail drawUp) {
        return Run.atStart(drawUp);
    }

    @Bean
    Trigger drawUpHourly(JobDetail drawUp) {
        return Run.at(drawUp, "20 3 * * * ?");
    }
}

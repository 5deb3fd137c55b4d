package freshet.fleet;

import freshet.timetable.LocalRun;
import freshet.timetable.Run;
import org.quartz.JobDetail;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * When readiness is looked at anew because a day has passed, for a proof that ran out or an opening that began: in each time zone as its
 * day begins, and an hour later, for zones whose clocks skip midnight on a day and for a first run that failed. What was missed while
 * nothing ran is made up by one run.
 */
@Configuration(proxyBeanMethods = false)
class DaySchedule {

    static final String DAY = "0 1 0,1 * * ?";

    @Bean
    JobDetail turnDay() {
        return Run.of("fleet", "day", DayJob.class);
    }

    @Bean
    LocalRun turnEachDay(JobDetail turnDay) {
        return new LocalRun(turnDay, DAY);
    }
}

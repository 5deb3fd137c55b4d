package freshet.notices;

import freshet.timetable.Run;
import org.quartz.JobDetail;
import org.quartz.Trigger;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * When notices work: a round every quarter of an hour, because somewhere a full hour begins at each of them, and sending every minute.
 * A missed run is made up once, however many were missed: either looks at what is owed then.
 */
@Configuration(proxyBeanMethods = false)
class NoticesSchedule {

    @Bean
    JobDetail goRound() {
        return Run.of("notices", "round", RoundJob.class);
    }

    @Bean
    Trigger goRoundQuarterly(JobDetail goRound) {
        return Run.at(goRound, "10 0/15 * * * ?");
    }

    @Bean
    JobDetail sendMail() {
        return Run.of("notices", "send", SendJob.class);
    }

    @Bean
    Trigger sendMailMinutely(JobDetail sendMail) {
        return Run.at(sendMail, "40 * * * * ?");
    }
}

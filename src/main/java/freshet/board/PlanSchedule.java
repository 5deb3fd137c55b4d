package freshet.board;

import freshet.timetable.LocalRun;
import freshet.timetable.Run;
import org.quartz.JobDetail;
import org.quartz.Trigger;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * When planning runs: for everything at every start, and each morning for the sites of each time zone by their own clock, once a day,
 * never none, never two: at half past four no zone moves its clock. After days when nothing ran, all that fell due meanwhile is planned
 * by one run. Changes to the register plan what they touch at once, by themselves.
 */
@Configuration(proxyBeanMethods = false)
class PlanSchedule {

    static final String MORNING = "0 30 4 * * ?";

    @Bean
    JobDetail planBoard() {
        return Run.of("board", "plan", PlanJob.class);
    }

    @Bean
    Trigger planAtStart(JobDetail planBoard) {
        return Run.atStart(planBoard);
    }

    @Bean
    JobDetail planMorning() {
        return Run.of("board", "morning", MorningJob.class);
    }

    @Bean
    LocalRun planEachMorning(JobDetail planMorning) {
        return new LocalRun(planMorning, MORNING);
    }
}

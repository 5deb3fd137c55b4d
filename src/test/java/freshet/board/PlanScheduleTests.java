package freshet.board;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.quartz.JobDetail;
import org.quartz.JobKey;
import org.quartz.Scheduler;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

@FreshetTest
class PlanScheduleTests {

    private static final JobKey PLAN = JobKey.jobKey("plan", "board");

    @Autowired
    Scheduler scheduler;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    /** That what was missed is made up once is shown of every run by the clock in {@code LocalRunTests}. */
    @Test
    void keepsItsJobsInTheSharedStoreToBeDoneAgainWhenCutOff() throws Exception {
        assertThat(scheduler.getMetaData().isJobStoreClustered()).isTrue();
        for (JobKey key : List.of(PLAN, new JobKey("morning", "board"))) {
            JobDetail job = scheduler.getJobDetail(key);
            assertThat(job.isDurable()).isTrue();
            assertThat(job.requestsRecovery()).isTrue();
            assertThat(job.isConcurrentExecutionDisallowed()).isTrue();
        }
    }

    @Test
    void plansWhenTheSchedulerStarts() throws Exception {
        clock.set("2026-03-14T14:00:00Z");
        yard.unit("BF-01");
        database.sql("delete from task").update();
        scheduler.start();
        try {
            Instant end = Instant.now().plus(Duration.ofSeconds(60));
            while (tasks() == 0 && Instant.now().isBefore(end)) {
                Thread.sleep(100);
            }
        } finally {
            scheduler.standby();
        }
        assertThat(tasks()).isEqualTo(4);
    }

    private int tasks() {
        return database.sql("select count(*) from task").query(Integer.class).single();
    }
}

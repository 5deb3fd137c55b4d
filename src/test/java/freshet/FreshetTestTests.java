package freshet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FreshetTestTests {

    @Autowired
    JdbcClient database;

    @Autowired
    Clock clock;

    @Autowired
    TestClock testClock;

    @Autowired
    MockMvc pages;

    @LocalServerPort
    int port;

    @Test
    @Order(1)
    void runsOnTheSamePostgresAsTheProduct() {
        assertThat(database.sql("show server_version").query(String.class).single())
                .startsWith("18");
        assertThat(database.sql("select datlocale from pg_database where datname = current_database()")
                        .query(String.class)
                        .single())
                .isEqualTo("C.UTF-8");
    }

    @Test
    @Order(2)
    void answersBothToMockMvcAndOnARealPort() throws Exception {
        pages.perform(get("/nowhere")).andExpect(status().is3xxRedirection());

        URI health = URI.create("http://127.0.0.1:" + port + "/actuator/health");
        assertThat(HttpClient.newHttpClient()
                        .send(HttpRequest.newBuilder(health).build(), BodyHandlers.ofString())
                        .body())
                .contains("\"UP\"");
    }

    @Test
    @Order(3)
    void leavesARowAndAStandingClockBehind() {
        database.sql("create table if not exists clean_slate (id integer primary key)")
                .update();
        database.sql("insert into clean_slate values (1)").update();
        testClock.set("2027-03-01T08:00:00Z");
        testClock.advance(Duration.ofDays(1));

        assertThat(clock.instant()).isEqualTo("2027-03-02T08:00:00Z");
    }

    @Test
    @Order(4)
    void findsNeitherInTheNextTest() {
        assertThat(database.sql("select count(*) from clean_slate")
                        .query(Integer.class)
                        .single())
                .isZero();
        assertThat(clock.instant()).isBetween(Instant.now().minusSeconds(60), Instant.now());
        database.sql("drop table clean_slate").update();
    }
}

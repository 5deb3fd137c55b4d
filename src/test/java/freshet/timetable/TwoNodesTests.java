package freshet.timetable;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.TestDatabase;
import freshet.database.RunningProgram;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/**
 * Two processes of the product on one database: what each run did is written down by a trigger on the table of runs, in a schema of the
 * test's own.
 */
@Tag("process")
class TwoNodesTests {

    private static final int SECONDS = 14;
    /** The lock that planning takes first. */
    private static final long PLANNING = 5_318_008_001L;

    private static final String OBSERVE = """
            create schema seen;
            create table seen.event (nr bigint generated always as identity, run text, due_at timestamptz, node text, what text);
            create function seen.note() returns trigger language plpgsql as $$
            begin
              insert into seen.event (run, due_at, node, what)
              values (new.room || '.' || new.name, new.due_at, new.node,
                      case when new.ended_at is null then 'began' else coalesce(new.trouble, 'done') end);
              return null;
            end $$;
            create trigger seen after insert or update on run for each row execute function seen.note();
            create view seen.morning as select * from seen.event where run = 'board.morning';
            """;

    @TempDir
    Path folder;

    private JdbcConnectionDetails database;
    private Connection connection;

    @BeforeEach
    void emptyDatabase() throws SQLException {
        database = TestDatabase.empty("freshet_two_nodes");
        connection = connect();
    }

    @AfterEach
    void disconnect() throws SQLException {
        connection.close();
    }

    @Test
    void runsEachThingOnceThroughDowntimeAKillAndAFailure() throws Exception {
        try (RunningProgram north = start("north", "--spring.profiles.active=example")) {
            Owner owner = Owner.signedIn(north.awaitLine("Freshet is ready:"));
            execute(OBSERVE);
            owner.press("timetable/draw-up");
            await("select count(*) = 2 from qrtz_cron_triggers where time_zone_id like 'America/%'");

            execute("""
                    update qrtz_triggers set next_fire_time = (extract(epoch from now() - interval '5 days') * 1000)::bigint
                    where trigger_name like 'morning %'""");
            try (RunningProgram south = start("south")) {
                String there = south.awaitLine("Freshet is ready:");
                await("select exists (select 1 from seen.morning where what = 'done')");
                // the first minute of a day is no time for a test of the morning, and the timetable would mend what
                // comes next
                execute("update qrtz_triggers set trigger_state = 'PAUSED' where job_name in ('draw-up', 'day')");
                assertThat(texts("select what from seen.morning order by nr"))
                        .as("five days of downtime are made up once")
                        .containsExactly("began", "done");
                assertThat(texts("""
                                select 'later' from qrtz_triggers
                                where trigger_name like 'morning %' and next_fire_time > extract(epoch from now()) * 1000""")).hasSize(1);

                killInTheMiddleOfOneOfManyRuns(Map.of("north", north, "south", south));
                String left = texts("select node from seen.morning order by nr desc limit 1")
                        .get(0);
                showsAFailureAndGoesOn(left.equals("north") ? owner : Owner.signedIn(there));
            }
        }
    }

    /** Planning every second for a while; one of the runs is cut off between its first row and its last by killing its process. */
    private void killInTheMiddleOfOneOfManyRuns(Map<String, RunningProgram> nodes) throws Exception {
        execute("truncate seen.event");
        List<String> tasks = tasks();
        execute("update qrtz_cron_triggers set cron_expression = '* * * * * ?' where trigger_name like 'morning %'");
        execute("""
                update qrtz_triggers set next_fire_time = (extract(epoch from now()) + 1)::bigint * 1000,
                  end_time = (extract(epoch from now()) + %d)::bigint * 1000
                where trigger_name like 'morning %%'""".formatted(SECONDS));
        await("select count(*) >= 3 from seen.morning where what = 'done'");

        String killed;
        try (Connection planning = connect();
                Connection hand = connect()) {
            query(planning, "select pg_advisory_lock(" + PLANNING + ")");
            execute("""
                    create table seen.task as
                      select *, row_number() over (order by unit_id, rule_id, occurrence) as place, count(*) over () as tasks
                      from task where state = 'OPEN' and started_at is null and rule_id is not null
                        and id not in (select task_id from round_stop where task_id is not null);
                    delete from task where id in (select id from seen.task);
                    """);
            hand.setAutoCommit(false);
            try (Statement last = hand.createStatement()) {
                last.execute("""
                        insert into task (rule_id, unit_id, occurrence, site_id, checklist_id, title, opens_on, due_on, minutes,
                                          state, planned_at)
                        select rule_id, unit_id, occurrence, site_id, checklist_id, title, opens_on, due_on, minutes, state, planned_at
                        from seen.task where place = tasks""");
            }
            query(planning, "select pg_advisory_unlock(" + PLANNING + ")");
            await("""
                    select exists (select 1 from pg_stat_activity where datname = current_database()
                                     and wait_event_type = 'Lock' and query like '%insert into task%')""");
            killed = texts("select node from seen.morning order by nr desc limit 1")
                    .get(0);
            nodes.get(killed).kill();
            hand.rollback();
        }
        await("select not exists (select 1 from qrtz_triggers where job_name = 'morning')");
        await("select what <> 'began' from seen.morning order by nr desc limit 1");

        assertThat(tasks()).as("nothing lost, nothing twice").isEqualTo(tasks);
        List<Long> due = numbers(
                "select extract(epoch from due_at)::bigint from seen.morning where what = 'done' order by due_at, nr");
        assertThat(due)
                .as("each second once")
                .hasSizeGreaterThan(SECONDS - 3)
                .isEqualTo(LongStream.rangeClosed(due.get(0), due.get(due.size() - 1))
                        .boxed()
                        .toList());
        assertThat(texts("""
                        select string_agg(what || ' by ' || case when node = '%s' then 'killed' else 'other' end, ', ' order by nr)
                        from seen.morning group by due_at having count(*) <> 2""".formatted(killed)))
                .as("the run that was cut off, and no other, began again")
                .containsExactly("began by killed, began by other, done by other");
    }

    /** A table that is not there makes planning fail; the page says so, other runs go on, and what failed is tried again by itself. */
    private void showsAFailureAndGoesOn(Owner owner) throws Exception {
        execute("truncate seen.event");
        execute("alter table care_rule rename to care_rule_away");
        owner.press("board/plan");
        await("select exists (select 1 from seen.event where run = 'board.plan' and what = 'UNFORESEEN')");
        assertThat(owner.line("Planning of everything")).contains("Failed", "Something that Freshet does not know");
        owner.press("notices/round");
        await("select exists (select 1 from seen.event where run = 'notices.round' and what = 'done')");

        execute("alter table care_rule_away rename to care_rule");
        owner.press("timetable/draw-up");
        await("select exists (select 1 from seen.event where run = 'board.plan' and what = 'done')");
        assertThat(owner.line("Planning of everything")).contains("Went well").doesNotContain("Failed");
    }

    private RunningProgram start(String name, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                "--server.port=0",
                "--freshet.data-dir=" + folder.resolve(name),
                "--spring.datasource.url=" + database.getJdbcUrl(),
                "--spring.datasource.username=" + database.getUsername(),
                "--spring.datasource.password=" + database.getPassword(),
                "--spring.quartz.properties.org.quartz.scheduler.instanceId=" + name,
                "--spring.quartz.properties.org.quartz.scheduler.idleWaitTime=1000",
                "--spring.quartz.properties.org.quartz.jobStore.clusterCheckinInterval=1000",
                // however slow the machine: only days of downtime are too late to be made up one by one
                "--spring.quartz.properties.org.quartz.jobStore.misfireThreshold=300000"));
        arguments.addAll(List.of(more));
        return RunningProgram.freshet(arguments.toArray(String[]::new));
    }

    private List<String> tasks() throws SQLException {
        return texts("""
                select concat_ws(' ', unit_id, rule_id, occurrence, site_id, position_id, opens_on, due_on, state, state_why)
                from task where rule_id is not null order by 1""");
    }

    private Connection connect() throws SQLException {
        return DriverManager.getConnection(database.getJdbcUrl(), database.getUsername(), database.getPassword());
    }

    private void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private void await(String condition) throws SQLException, InterruptedException {
        for (long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60); System.nanoTime() < end; Thread.sleep(50)) {
            if (query(connection, condition).equals(List.of("t"))) {
                return;
            }
        }
        throw new AssertionError("never so: " + condition + "; seen: "
                + texts("select concat_ws(' ', nr, run, due_at, node, what) from seen.event order by nr"));
    }

    private List<String> texts(String sql) throws SQLException {
        return query(connection, sql);
    }

    private List<Long> numbers(String sql) throws SQLException {
        return texts(sql).stream().map(Long::valueOf).toList();
    }

    private static List<String> query(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            List<String> first = new ArrayList<>();
            while (rows.next()) {
                first.add(rows.getString(1));
            }
            return first;
        }
    }

    /** The owner of the example yard at a browser without script. */
    private static final class Owner {

        private final HttpClient browser =
                HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
        private final URI address;

        private Owner(String address) {
            this.address = URI.create(address);
        }

        static Owner signedIn(String address) throws IOException, InterruptedException {
            Owner owner = new Owner(address);
            owner.send("sign-in", owner.open("sign-in"), "signInName", "ilse", "password", "port ansel thaw");
            return owner;
        }

        void press(String run) throws IOException, InterruptedException {
            Document page = open("timetable");
            assertThat(page.select("form[action=/timetable/" + run + "] button"))
                    .as("a press for %s on %s", run, page.text())
                    .hasSize(1);
            send("timetable/" + run, page);
        }

        /** What the page says of a run. */
        String line(String name) throws IOException, InterruptedException {
            return open("timetable").select("tr:contains(" + name + ")").text();
        }

        private Document open(String path) throws IOException, InterruptedException {
            HttpRequest request =
                    HttpRequest.newBuilder(address.resolve("/" + path)).build();
            return Jsoup.parse(browser.send(request, BodyHandlers.ofString()).body());
        }

        private void send(String path, Document page, String... namesAndValues)
                throws IOException, InterruptedException {
            StringBuilder form = new StringBuilder("_csrf=")
                    .append(page.select("[name=_csrf]").val());
            for (int i = 0; i < namesAndValues.length; i += 2) {
                form.append('&')
                        .append(namesAndValues[i])
                        .append('=')
                        .append(URLEncoder.encode(namesAndValues[i + 1], StandardCharsets.UTF_8));
            }
            HttpRequest request = HttpRequest.newBuilder(address.resolve("/" + path))
                    .header("Content-Type", "application/x-www-form-urlencoded")
                    .POST(BodyPublishers.ofString(form.toString()))
                    .build();
            assertThat(browser.send(request, BodyHandlers.discarding()).statusCode())
                    .isEqualTo(302);
        }
    }
}

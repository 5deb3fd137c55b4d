package freshet;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.TestExecutionListeners;
import org.springframework.test.context.TestExecutionListeners.MergeMode;

/**
 * The whole product on a real PostgreSQL, one context shared by all tests that wear this and add nothing of their own to it.
 *
 * <p>Inject a {@code MockMvc} for pages, {@code @LocalServerPort int port} for a browser, any public door, a {@link TestClock}. Before
 * each test (and before its {@code @BeforeEach}) the tables hold what the product lays in at its start and no more, and the clock
 * runs; what a test needs it enters itself, through the doors. Do not add properties, profiles or mock beans to one class: each such difference costs a second context.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@AutoConfigureMockMvc
@Import({TestDatabase.class, TestMail.class})
@TestExecutionListeners(listeners = CleanSlate.class, mergeMode = MergeMode.MERGE_WITH_DEFAULTS)
public @interface FreshetTest {}

package freshet;

import java.time.Clock;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.context.annotation.Bean;

/** Starts Freshet and holds the one clock that every room reads. */
@SpringBootApplication
public class Freshet {

    public static void main(String[] arguments) {
        SpringApplication.run(Freshet.class, arguments);
    }

    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}

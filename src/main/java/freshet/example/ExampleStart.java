package freshet.example;

import freshet.people.Person;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Sets the example yard up before the product says that it is ready, then says who may sign in. */
@Component
@Profile("example")
class ExampleStart implements ApplicationRunner {

    private final Example example;

    ExampleStart(Example example) {
        this.example = example;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (example.setUp()) {
            System.out.println("The example yard of Port Ansel is set up.");
        }
    }

    @EventListener(ApplicationReadyEvent.class)
    @Order(Ordered.LOWEST_PRECEDENCE)
    void saySignIns() {
        System.out.println("Sign-ins of the example yard, all with the password \"" + Example.PASSWORD + "\":");
        for (Person person : example.signIns()) {
            System.out.println("  " + person.signInName() + ": " + person.fullName()
                    + (person.owner() ? ", owner" : ", technician"));
        }
        System.out.println("API token: " + Example.TOKEN);
    }
}

package freshet.database;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import org.springframework.boot.context.event.ApplicationEnvironmentPreparedEvent;
import org.springframework.boot.context.logging.LoggingApplicationListener;
import org.springframework.context.ApplicationListener;
import org.springframework.core.Ordered;
import org.springframework.core.env.Environment;

/**
 * Looks, as soon as the settings are known and before anything slow or any log file is begun, whether Freshet can run here; where no
 * datasource is set it claims the data folder for the embedded database.
 */
public class StartUpChecks implements ApplicationListener<ApplicationEnvironmentPreparedEvent>, Ordered {

    @Override
    public int getOrder() {
        return LoggingApplicationListener.DEFAULT_ORDER - 1;
    }

    @Override
    public void onApplicationEvent(ApplicationEnvironmentPreparedEvent event) {
        Environment settings = event.getEnvironment();
        if (settings.getProperty("spring.datasource.url", "").isBlank()) {
            DataFolder folder = DataFolder.claim(Path.of(settings.getRequiredProperty("freshet.data-dir")));
            event.getSpringApplication()
                    .addInitializers(context -> context.getBeanFactory().registerSingleton("dataFolder", folder));
        }
        refuseTakenPort(settings);
    }

    private static void refuseTakenPort(Environment settings) {
        int port = settings.getProperty("server.port", Integer.class, 8080);
        String address = settings.getProperty("server.address", "");
        try (ServerSocket socket = new ServerSocket()) {
            socket.setReuseAddress(true);
            socket.bind(
                    address.isBlank()
                            ? new InetSocketAddress(Math.max(port, 0))
                            : new InetSocketAddress(InetAddress.getByName(address), Math.max(port, 0)));
        } catch (IOException e) {
            throw new StartRefused(
                    "Freshet cannot listen on port " + port + " (" + e.getMessage()
                            + "): stop the program that uses it, or choose another port with --server.port=PORT.",
                    e);
        }
    }
}

package freshet.database;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.UnknownHostException;
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
        String address = settings.getProperty("server.address", "");
        int port = port(settings.getProperty("server.port", "8080"));
        try (ServerSocket socket = new ServerSocket()) {
            socket.setReuseAddress(true);
            socket.bind(
                    address.isBlank()
                            ? new InetSocketAddress(port)
                            : new InetSocketAddress(InetAddress.getByName(address), port));
        } catch (UnknownHostException e) {
            throw new StartRefused("Freshet knows no address " + address + " to listen on: mend server.address.", e);
        } catch (IOException e) {
            throw new StartRefused(StartRefused.portTaken(port), e);
        }
    }

    private static int port(String setting) {
        try {
            int port = Integer.parseInt(setting.strip());
            if (port >= 0 && port <= 65_535) {
                return port;
            }
        } catch (NumberFormatException e) {
            // refused below
        }
        throw new StartRefused("The setting server.port is " + setting + ", and must be a number from 0 to 65535.");
    }
}

package freshet.database;

import org.springframework.boot.autoconfigure.condition.ConditionalOnBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Puts the embedded server under the connection pool when the start-up checks have claimed a data folder for it. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnBean(DataFolder.class)
class DatabaseConfiguration {

    // the pool takes its address from this bean, and so is closed before the server stops
    @Bean(destroyMethod = "close")
    EmbeddedPostgres embeddedPostgres(DataFolder folder) {
        return EmbeddedPostgres.start(folder, System.out::println);
    }
}

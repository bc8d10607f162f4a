package org.skeinday.platform.db;

import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;

/** Makes the schema of a new database; refuses one that exists with another schema, since it is rebuilt instead. */
final class Migrations {
    private Migrations() {}

    static void run(DataSource source, boolean existed) {
        Flyway flyway = Flyway.configure()
                .dataSource(source)
                .locations("classpath:migrations")
                .loggers("slf4j")
                .load();
        if (existed && differs(flyway)) {
            throw new IllegalStateException("its schema is not the one of this program");
        }
        if (!existed) {
            flyway.migrate();
        }
    }

    private static boolean differs(Flyway flyway) {
        MigrationInfo[] pending = flyway.info().pending();
        return pending.length > 0 || !flyway.validateWithResult().validationSuccessful;
    }
}

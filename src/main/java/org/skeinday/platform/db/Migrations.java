package org.skeinday.platform.db;

import java.util.Arrays;
import java.util.Set;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;

/** Makes the schema of a new database; refuses one that exists with another schema, since it is rebuilt instead. */
final class Migrations {
    /** Applied there and not known here: beyond the last that is known, or between two. */
    private static final Set<MigrationState> UNKNOWN =
            Set.of(MigrationState.FUTURE_SUCCESS, MigrationState.MISSING_SUCCESS);

    private Migrations() {}

    static void run(DataSource source, boolean existed) {
        Flyway flyway = Flyway.configure()
                .dataSource(source)
                .locations("classpath:migrations")
                .loggers("slf4j")
                .load();
        if (existed) {
            refuseOther(flyway);
        }
        if (!existed) {
            flyway.migrate();
        }
    }

    private static void refuseOther(Flyway flyway) {
        MigrationInfo[] applied = flyway.info().applied();
        if (applied.length == 0) {
            throw new IllegalStateException("it holds no schema");
        }
        if (Arrays.stream(applied).anyMatch(m -> UNKNOWN.contains(m.getState()))) {
            throw new OtherSchema(true);
        }
        if (flyway.info().pending().length > 0 || !flyway.validateWithResult().validationSuccessful) {
            throw new OtherSchema(false);
        }
    }
}

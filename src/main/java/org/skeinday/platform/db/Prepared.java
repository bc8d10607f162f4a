package org.skeinday.platform.db;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import org.jooq.DSLContext;
import org.jooq.exception.DataAccessException;
import org.jspecify.annotations.Nullable;

/**
 * The statements of one connection that are the same for row after row, each rendered and prepared once. Everything else
 * goes through {@link Tx#sql}, which does both anew each time.
 */
final class Prepared {
    private final Supplier<Connection> connection;
    private final Map<String, PreparedStatement> statements = new HashMap<>();

    Prepared(DSLContext sql) {
        this.connection = () -> Objects.requireNonNull(
                sql.configuration().connectionProvider().acquire(), "a transaction has a connection");
    }

    /**
     * Runs a statement with these values in place of its question marks.
     *
     * @return how many rows it wrote
     * @throws DataAccessException as {@link Tx#sql} does
     */
    int run(String statement, @Nullable Object... values) {
        try {
            PreparedStatement prepared = prepared(statement);
            for (int i = 0; i < values.length; i++) {
                prepared.setObject(i + 1, values[i]);
            }
            return prepared.executeUpdate();
        } catch (SQLException e) {
            throw new DataAccessException("SQL [" + statement + "]; " + e.getMessage(), e);
        }
    }

    private PreparedStatement prepared(String statement) throws SQLException {
        PreparedStatement known = statements.get(statement);
        if (known == null) {
            known = connection.get().prepareStatement(statement);
            statements.put(statement, known);
        }
        return known;
    }
}

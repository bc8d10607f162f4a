package org.skeinday.platform.db;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Savepoint;

/** The writer's transaction: a savepoint for each act, one commit for the batch. */
public record WritingTx(Connection connection, Tx tx) {
    public Savepoint savepoint() {
        return run(connection::setSavepoint, "A savepoint could not be set");
    }

    public void backTo(Savepoint savepoint) {
        run(
                () -> {
                    connection.rollback(savepoint);
                    return true;
                },
                "Going back to a savepoint failed");
    }

    public void commit() {
        run(
                () -> {
                    connection.commit();
                    return true;
                },
                "The commit failed");
    }

    public void rollback() {
        run(
                () -> {
                    connection.rollback();
                    return true;
                },
                "The rollback failed");
    }

    private interface Step<T> {
        T run() throws SQLException;
    }

    private static <T> T run(Step<T> step, String otherwise) {
        try {
            return step.run();
        } catch (SQLException e) {
            throw new DatabaseTrouble(otherwise + ": " + e.getMessage(), e);
        }
    }
}

package org.skeinday.platform.db;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.Function;
import org.h2.jdbcx.JdbcConnectionPool;
import org.jooq.Configuration;
import org.jooq.SQLDialect;
import org.jooq.conf.Settings;
import org.jooq.impl.DSL;
import org.jooq.impl.DefaultConfiguration;
import org.jooq.impl.DefaultConnectionProvider;

/**
 * The H2 database: a projection of the journal that may be thrown away. One connection writes, the others read, each
 * in one snapshot so that a page shows one state.
 */
public final class Database implements AutoCloseable {
    /** H2's own level, beyond the five of java.sql.Connection. */
    private static final int SNAPSHOT = 6;

    /** Parsed statements that a connection keeps: all that the program has. H2's own 8 were parsed again and again. */
    private static final int STATEMENTS = 256;

    /** What jOOQ finds out about our records is kept with its configuration: one for all, so that it is found once. */
    private static final Configuration JOOQ =
            new DefaultConfiguration().set(SQLDialect.H2).set(new Settings().withExecuteLogging(false));

    private final JdbcConnectionPool pool;
    private final Connection writing;
    private final WritingTx writingTx;
    private final boolean fresh;

    private Database(JdbcConnectionPool pool, Connection writing, boolean fresh) {
        this.pool = pool;
        this.writing = writing;
        this.writingTx = new WritingTx(writing, tx(writing));
        this.fresh = fresh;
    }

    /** The file that holds the database called {@code name} in {@code folder}. */
    public static Path file(Path folder, String name) {
        return folder.resolve(name + ".mv.db");
    }

    /**
     * Opens the database, making its schema when it is new.
     *
     * @throws UnusableDatabase when the file cannot be read
     * @throws OtherSchema when its schema is the one of another version of the program
     */
    public static Database open(Path folder, String name) {
        boolean existed = Files.exists(file(folder, name));
        String url = "jdbc:h2:file:" + folder.toAbsolutePath().resolve(name)
                + ";DB_CLOSE_ON_EXIT=FALSE;DB_CLOSE_DELAY=-1;LOCK_TIMEOUT=5000;QUERY_CACHE_SIZE=" + STATEMENTS
                + ";TRACE_LEVEL_FILE=0"; // a failing statement goes to the log, never with its values beside the record
        return open(url, existed);
    }

    /** A database in memory that ends with this object: for checking a record, never for keeping one. */
    public static Database scratch(String name) {
        return open("jdbc:h2:mem:" + name + ";DB_CLOSE_DELAY=-1;QUERY_CACHE_SIZE=" + STATEMENTS, false);
    }

    private static Database open(String url, boolean existed) {
        JdbcConnectionPool pool = JdbcConnectionPool.create(url, "sa", "");
        pool.setMaxConnections(24);
        try {
            Connection writing = pool.getConnection();
            if (existed) {
                Schema.refuseOther(writing);
            } else {
                Schema.make(writing);
            }
            writing.setAutoCommit(false);
            return new Database(pool, writing, !existed);
        } catch (OtherSchema e) {
            shutDown(pool);
            throw e;
        } catch (SQLException | RuntimeException e) {
            shutDown(pool);
            throw new UnusableDatabase("The database could not be opened: " + e.getMessage(), e);
        }
    }

    /** Whether opening it made it: then its schema is all it holds. */
    public boolean isFresh() {
        return fresh;
    }

    /** Answers what {@code question} reads, all of it in one snapshot. */
    public <T> T read(Function<Tx, T> question) {
        refuseClosed();
        try (Connection connection = pool.getConnection()) {
            connection.setTransactionIsolation(SNAPSHOT);
            connection.setAutoCommit(false);
            try {
                return question.apply(tx(connection));
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        } catch (SQLException e) {
            throw new DatabaseTrouble("Reading failed: " + e.getMessage(), e);
        }
    }

    /** A new connection would open a file that a fault has closed anew, in silence and without the last commits. */
    private void refuseClosed() {
        try {
            if (writing.isClosed()) {
                throw new DatabaseTrouble("Reading failed: the database was closed by a fault");
            }
        } catch (SQLException e) {
            throw new DatabaseTrouble("Reading failed: " + e.getMessage(), e);
        }
    }

    /** The one writing connection, for the writer thread only. */
    public WritingTx writing() {
        return writingTx;
    }

    private static Tx tx(Connection connection) {
        return new Tx(DSL.using(JOOQ.derive(new DefaultConnectionProvider(connection))));
    }

    @Override
    public void close() {
        closeWhole();
    }

    /** Closes, and says whether H2 did so in good order: it had not been closed by a fault before. */
    public boolean closeWhole() {
        boolean whole = true;
        try {
            writing.rollback(); // fails on a database that a fault has closed, which the shutdown would open again
            writing.close();
        } catch (SQLException e) {
            whole = false;
        }
        return shutDown(pool) && whole;
    }

    private static boolean shutDown(JdbcConnectionPool pool) {
        try (Connection connection = pool.getConnection();
                var statement = connection.createStatement()) {
            statement.execute("SHUTDOWN");
            return true;
        } catch (SQLException e) {
            return false; // already closed, or never opened: either way nothing is held any more
        } finally {
            pool.dispose();
        }
    }
}

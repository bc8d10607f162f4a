package org.skeinday.platform.db;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The tables of all rooms. A database keeps the hash of the text that made it: one with another hash is not changed step
 * by step but built anew from the journal, which holds everything.
 */
final class Schema {
    /**
     * The rooms that have tables, each in {@code migrations/<room>.sql}, in the order in which they are made: a room
     * stands after those whose tables its own name. The build makes them in the order of their names, which will do as
     * long as no table names another room's.
     */
    static final List<String> ROOMS = List.of(
            "record",
            "device",
            "contest",
            "evidence",
            "motor",
            "attempt",
            "winding",
            "hall",
            "steps",
            "dayplan",
            "review",
            "audit");

    private static final String TEXT = ROOMS.stream().map(Schema::text).collect(Collectors.joining("\n"));
    private static final String HASH = hash(TEXT);

    private Schema() {}

    /** Makes all tables in an empty database; the hash comes last, so that a schema half made is never taken for one. */
    static void make(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(TEXT);
            statement.execute("create table schema_made (hash varchar(64) not null)");
            statement.execute("insert into schema_made values ('" + HASH + "')");
        }
    }

    /**
     * Refuses a database that was made of another text.
     *
     * @throws OtherSchema when another version of the program made it
     * @throws IllegalStateException when it holds nothing: H2 opens a file that was cut as an empty one
     */
    static void refuseOther(Connection connection) throws SQLException {
        if (!has(connection, "POSITION")) {
            throw new IllegalStateException("it holds no schema");
        }
        if (!has(connection, "SCHEMA_MADE") || !HASH.equals(first(connection, "select hash from schema_made"))) {
            throw new OtherSchema();
        }
    }

    private static boolean has(Connection connection, String table) throws SQLException {
        return !first(connection, "select table_name from information_schema.tables where table_name = '" + table + "'")
                .isEmpty();
    }

    private static String first(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            return rows.next() ? rows.getString(1) : "";
        }
    }

    /** Without comments and indents: they say nothing to a database, and line ends differ between systems. */
    private static String text(String room) {
        String file = "/migrations/" + room + ".sql";
        try (InputStream in = Schema.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("The program lacks its file " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty() && !line.startsWith("--"))
                    .collect(Collectors.joining("\n"));
        } catch (IOException e) {
            throw new IllegalStateException("The program's file " + file + " cannot be read", e);
        }
    }

    private static String hash(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}

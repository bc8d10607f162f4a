package org.skeinday.platform.db;

/** The database failed under a running program: closed, full or damaged. */
public final class DatabaseTrouble extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public DatabaseTrouble(String message) {
        super(message);
    }

    public DatabaseTrouble(String message, Throwable cause) {
        super(message, cause);
    }
}

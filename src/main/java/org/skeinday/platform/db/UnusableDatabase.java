package org.skeinday.platform.db;

/** The database file cannot be used; it is set aside and built anew from the journal. */
public final class UnusableDatabase extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public UnusableDatabase(String message, Throwable cause) {
        super(message, cause);
    }
}

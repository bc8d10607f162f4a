package org.skeinday.platform.db;

/** The database was made by another version of the program: its tables are not the ones that this one makes. */
public final class OtherSchema extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OtherSchema() {
        super("its schema is not the one of this program");
    }
}

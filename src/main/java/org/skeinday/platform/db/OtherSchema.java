package org.skeinday.platform.db;

/** The database was made by another version of the program. */
public final class OtherSchema extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final boolean newer;

    OtherSchema(boolean newer) {
        super("its schema is not the one of this program");
        this.newer = newer;
    }

    /** Whether it knows migrations that this program does not: then it is not for this program to touch. */
    public boolean isNewer() {
        return newer;
    }
}

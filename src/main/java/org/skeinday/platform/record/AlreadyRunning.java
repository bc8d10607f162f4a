package org.skeinday.platform.record;

/** Another Skeinday holds this data folder: exit code 4. */
public final class AlreadyRunning extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String where;

    /** @param where address of the one that runs, empty when it is not known */
    public AlreadyRunning(String message, String where) {
        super(message);
        this.where = where;
    }

    public String where() {
        return where;
    }
}

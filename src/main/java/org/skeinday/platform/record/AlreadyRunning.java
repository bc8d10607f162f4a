package org.skeinday.platform.record;

/** Another Skeinday holds this data folder: exit code 4. */
public final class AlreadyRunning extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public AlreadyRunning(String message) {
        super(message);
    }
}

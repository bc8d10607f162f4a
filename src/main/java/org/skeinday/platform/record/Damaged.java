package org.skeinday.platform.record;

/** The record on disk is not whole: exit code 5, naming what and where. */
public final class Damaged extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Damaged(String message) {
        super(message);
    }
}

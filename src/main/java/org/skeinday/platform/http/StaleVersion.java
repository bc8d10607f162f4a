package org.skeinday.platform.http;

/** Somebody else changed it since this form was opened: 409, with what changed. */
public final class StaleVersion extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public StaleVersion(String whatChanged) {
        super(whatChanged, null, false, false);
    }
}

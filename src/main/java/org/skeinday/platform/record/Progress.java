package org.skeinday.platform.record;

import java.util.Locale;

/** How far the act that is being written has come: told by the writer's thread, read by whoever waits. */
final class Progress {
    private volatile String words = "";

    void looking() {
        words = "It is being looked through.";
    }

    /** @param done of {@code all} rows, 0 or more */
    void writing(long done, long all) {
        words = String.format(Locale.ROOT, "%,d of %,d rows are written.", done, all);
    }

    void saving() {
        words = "It is being saved to the disk.";
    }

    void idle() {
        words = "";
    }

    /** A sentence; empty while nothing is written. */
    String words() {
        return words;
    }
}

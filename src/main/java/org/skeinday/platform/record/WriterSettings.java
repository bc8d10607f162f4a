package org.skeinday.platform.record;

/**
 * How the writer waits.
 *
 * @param answerWithinMs how long a caller waits before it is told to ask again
 * @param reopenEveryMs between two tries to open the record again
 * @param keepFreeBytes with less free on the disk nothing more is taken
 */
public record WriterSettings(long answerWithinMs, long reopenEveryMs, long keepFreeBytes) {
    public static WriterSettings normal() {
        return new WriterSettings(10_000, 1_000, 64L << 20);
    }
}

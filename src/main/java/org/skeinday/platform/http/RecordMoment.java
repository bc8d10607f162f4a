package org.skeinday.platform.http;

/**
 * A moment of the record, as a page shows it.
 *
 * @param run of the program, differs at each start; empty where there is no record
 * @param n of the last act that is visible, 0 before the first
 */
public record RecordMoment(String run, long n) {
    static final RecordMoment NONE = new RecordMoment("", 0);

    /** Whether what was read at this moment has all that was visible at the other. */
    boolean has(RecordMoment other) {
        return run.equals(other.run) && n >= other.n;
    }

    /** As the page carries it and the stream names it. */
    public String words() {
        return run.isEmpty() ? "" : run + "-" + n;
    }
}

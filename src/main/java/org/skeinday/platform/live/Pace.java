package org.skeinday.platform.live;

/** Every waiting time of the live side; tests divide it. Milliseconds. */
public record Pace(long hintGatherMs, long heartbeatMs, long watchdogMs, long retryMostMs) {
    public static Pace normal() {
        return new Pace(100, 10_000, 25_000, 5_000);
    }

    public Pace dividedBy(long by) {
        return new Pace(hintGatherMs / by, heartbeatMs / by, watchdogMs / by, retryMostMs / by);
    }
}

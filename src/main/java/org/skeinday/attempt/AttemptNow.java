package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * An attempt as it stands. Times are milliseconds since 1970, null for steps that were not reached.
 *
 * @param flewIn its window as it stood when it was released, which is what the release is judged by; null before,
 *     for what a file brought, and without a window in records made before that was kept
 * @param verdict what was judged of it when it was decided; null before, for what a file brought, and in records made before
 *     this was kept
 */
public record AttemptNow(
        String id,
        String eventId,
        String entryId,
        AttemptNumber number,
        @Nullable String modelId,
        @Nullable String motorId,
        State state,
        @Nullable Long calledAtMs,
        @Nullable Long releasedAtMs,
        @Nullable Long officialMs,
        @Nullable String how,
        @Nullable String voidReason,
        @Nullable Long landedAtMs,
        @Nullable Long closedAtMs,
        boolean flownAgain,
        @Nullable Window flewIn,
        Aloft aloft,
        @Nullable AttemptVerdict verdict) {

    /** The same with another official time. */
    public AttemptNow timed(long ms) {
        return new AttemptNow(
                id,
                eventId,
                entryId,
                number,
                modelId,
                motorId,
                state,
                calledAtMs,
                releasedAtMs,
                ms,
                how,
                voidReason,
                landedAtMs,
                closedAtMs,
                flownAgain,
                flewIn,
                aloft,
                verdict);
    }

    /** Called and not over; what was given up is over, whether or not its turns are still on. */
    public boolean isOpen() {
        return state.isOpen();
    }

    /** Down, with its time still to be found. */
    public boolean waitsForItsTime() {
        return state == State.LANDED;
    }

    /** From {@code opensMs} to before {@code closesMs}; that there was none is kept as from 0 to before 0. */
    public record Window(long opensMs, long closesMs) {
        public boolean isNone() {
            return opensMs == closesMs;
        }
    }
}

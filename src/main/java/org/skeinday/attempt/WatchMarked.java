package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code watch.marked}: one press of one timekeeper beside the landing, or what the device noticed of its own clock.
 *
 * @param slot which timekeeper, 1 to 3
 * @param what a word of {@link WatchMark}
 * @param ms from release to this press on the device's monotonic clock; of a gap, by how much the clocks came apart
 * @param about id of the reading or mark that it takes back
 * @param atMs when, by the server's clock, epoch ms
 * @param boundMs by how much that may be wrong; null when the device did not know the server's clock
 */
public record WatchMarked(
        String id,
        String attemptId,
        int slot,
        String what,
        @Nullable Long ms,
        @Nullable String about,
        long atMs,
        @Nullable Long boundMs,
        @Nullable String personId) {
    public WatchMarked {
        Preconditions.within("A timekeeper's place", slot, 1, 3);
        EnumWords.parse("A timekeeper's key", WatchMark.class, what);
    }

    public boolean is(WatchMark mark) {
        return what.equals(mark.word());
    }

    /** The same so much later. */
    public WatchMarked movedBy(long byMs) {
        return new WatchMarked(id, attemptId, slot, what, ms, about, atMs + byMs, boundMs, personId);
    }

    /** A duration of a mark that has one, else zero. */
    public long msOrZero() {
        return ms == null ? 0 : ms;
    }
}

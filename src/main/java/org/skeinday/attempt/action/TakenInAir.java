package org.skeinday.attempt.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ElapsedDoubts;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.TapTime;

/** A watch that a device took while the model was in the air: it cannot have seen the release, so only its landing counts. */
public final class TakenInAir {
    private TakenInAir() {}

    /** Since when this device has the watch: what it had before another took it over, it has had since then. */
    static @Nullable Long since(Tx tx, ActContext context, String attempt, int slot) {
        Optional<WatchTaken> before = own(tx, context.device(), attempt, slot);
        return before.isPresent()
                ? before.get().takenMs()
                : Long.valueOf(context.now().toEpochMilli());
    }

    static boolean is(Tx tx, ActContext context, AttemptNow attempt, int slot) {
        return is(tx, context.device(), attempt, slot);
    }

    /** Whether this device took its watch after the release that stands. */
    public static boolean is(Tx tx, String device, AttemptNow attempt, int slot) {
        return own(tx, device, attempt.id(), slot)
                .filter(watch -> watch.isSince(attempt.releasedAtMs()))
                .isPresent();
    }

    /** Before which this watch saw no release, epoch ms: the call, or when its device took it. */
    static long notBefore(Tx tx, ActContext context, AttemptNow attempt, int slot) {
        Long called = attempt.calledAtMs();
        long taken = own(tx, context.device(), attempt.id(), slot)
                .map(WatchTaken::takenMs)
                .orElse(0L);
        return Math.max(called == null ? 0 : called, taken);
    }

    /** Whether a press for the release came when the model had long been in the air: it is kept, and is no release. */
    static boolean isLate(
            Tx tx, ActContext context, AttemptNow attempt, int slot, Optional<WatchMarked> known, TapTime.Moment when) {
        return is(tx, context, attempt, slot)
                || known.flatMap(mark -> ElapsedDoubts.apart(0, mark, when.atMs(), when.boundMs()))
                        .isPresent();
    }

    private static Optional<WatchTaken> own(Tx tx, String device, String attempt, int slot) {
        return WatchStore.everWatched(tx, attempt, device).stream()
                .filter(watch -> watch.slot() == slot)
                .findFirst();
    }
}

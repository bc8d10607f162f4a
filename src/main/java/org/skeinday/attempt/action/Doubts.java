package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.timing.FlightWindow;
import org.skeinday.timing.ReleaseVerdict;
import org.skeinday.timing.Watches;
import org.skeinday.timing.WatchesRule;

/**
 * What stands against taking a landed attempt's time by itself.
 *
 * @param found one sentence each; empty when nothing does
 * @param watches after what the captain decided of them
 * @param verdict whether it was inside its window; empty without a window or before the release
 */
public record Doubts(List<String> found, Watches watches, WatchesRule rule, Optional<ReleaseVerdict> verdict) {

    public static Doubts of(Tx tx, AttemptNow attempt, EventAdded event) {
        Timed timed = AttemptStore.timed(tx, attempt.id());
        FlightRules rules = FlightRulesStore.of(tx, event.id());
        WatchesRule rule = CloseAttempt.watchesRule(tx, event);
        List<String> found = new ArrayList<>(Readings.doubts(timed, rule, rules.hold()));
        Optional<ReleaseVerdict> verdict = verdict(tx, attempt, event, rules, timed);
        verdict.filter(v -> v.side() != ReleaseVerdict.Side.INSIDE).ifPresent(v -> found.add(v.words() + "."));
        return new Doubts(found, Readings.watches(timed, rules.hold()), rule, verdict);
    }

    private static Optional<ReleaseVerdict> verdict(
            Tx tx, AttemptNow attempt, EventAdded event, FlightRules rules, Timed timed) {
        return WindowStore.of(tx, event.id(), attempt.entryId())
                .map(rules::window)
                .flatMap(window -> rules.inside().equals("landing")
                        ? landing(window, attempt.landedAtMs())
                        : release(window, attempt, timed));
    }

    /** The moment of a landing comes from the first watch that saw it, by its own clock. */
    private static Optional<ReleaseVerdict> landing(FlightWindow window, @Nullable Long landedAtMs) {
        return Optional.ofNullable(landedAtMs).map(at -> window.placeLanding(at, LANDING_BOUND_MS));
    }

    /** Bounds above this are not believed when a tap comes in. */
    private static final long LANDING_BOUND_MS = 1_000;

    private static Optional<ReleaseVerdict> release(FlightWindow window, AttemptNow attempt, Timed timed) {
        Long released = attempt.releasedAtMs();
        if (released == null) {
            return Optional.empty();
        }
        Optional<WatchMarked> mark = timed.marks().release();
        if (mark.isEmpty()) {
            return Optional.of(window.place(released, 0)); // pressed on the laptop, whose clock the window's is
        }
        Long bound = mark.get().boundMs();
        return Optional.of(
                bound == null
                        ? window.placeUnknown(mark.get().atMs())
                        : window.place(mark.get().atMs(), bound));
    }
}

package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.store.FlightWindows;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.FlightRulesStore;
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
public record TimeDoubts(List<String> found, Watches watches, WatchesRule rule, Optional<ReleaseVerdict> verdict) {

    public static TimeDoubts of(Tx tx, AttemptNow attempt, EventAdded event) {
        Timed timed = WatchStore.timed(tx, attempt.id());
        FlightRules rules = FlightRulesStore.of(tx, event.id());
        WatchesRule rule = CloseAttempt.watchesRule(tx, event);
        List<String> found = new ArrayList<>(Readings.doubts(timed, rule, rules.hold()));
        Optional<ReleaseVerdict> verdict = verdict(tx, attempt, rules, timed);
        rules.hold()
                .flatMap(hold -> Readings.caughtUnmarked(timed, attempt.aloft(), hold))
                .ifPresent(found::add);
        verdict.filter(v -> v.side() != ReleaseVerdict.Side.INSIDE).ifPresent(v -> found.add(v.words() + "."));
        return new TimeDoubts(found, Readings.watches(timed, rules.hold()), rule, verdict);
    }

    /** Elsewhere the officials' time counts: what is found of our own watches asks nobody here to decide anything. */
    public List<String> elsewhere() {
        List<String> ofWindow =
                verdict.filter(v -> v.side() != ReleaseVerdict.Side.INSIDE).map(v -> v.words() + ".").stream()
                        .toList();
        List<String> told = new ArrayList<>(found.size() > ofWindow.size() ? List.of(OURS_IN_DOUBT) : List.of());
        told.addAll(ofWindow);
        return told;
    }

    private static final String OURS_IN_DOUBT =
            "Our own watches are in doubt. The host decides and the announced time counts; what ours told stands beside it.";

    private static Optional<ReleaseVerdict> verdict(Tx tx, AttemptNow attempt, FlightRules rules, Timed timed) {
        return FlightWindows.of(tx, attempt)
                .map(rules::window)
                .filter(window -> attempt.releasedAtMs() != null)
                .map(window ->
                        rules.mustLandInside() ? landing(window, attempt, timed) : release(window, attempt, timed));
    }

    /** The middle of the landings that the watches saw, each by its own release and duration. */
    private static ReleaseVerdict landing(FlightWindow window, AttemptNow attempt, Timed timed) {
        List<WatchMarked> landings = Readings.landings(timed)
                .sorted(Comparator.comparingLong(WatchMarked::atMs))
                .toList();
        Long landed = attempt.landedAtMs();
        if (landings.isEmpty()) {
            return window.placeUnknown(landed == null ? 0 : landed);
        }
        WatchMarked middle = landings.get(landings.size() / 2);
        Long bound = middle.boundMs();
        return bound == null ? window.placeUnknown(middle.atMs()) : window.placeLanding(middle.atMs(), bound);
    }

    private static ReleaseVerdict release(FlightWindow window, AttemptNow attempt, Timed timed) {
        Long released = attempt.releasedAtMs();
        Optional<WatchMarked> mark = timed.marks().release(Readings.setAside(timed.judged()));
        if (mark.isEmpty()) {
            return window.place(released == null ? 0 : released, BY_EYE_MS);
        }
        Long bound = mark.get().boundMs();
        return bound == null
                ? window.placeUnknown(mark.get().atMs())
                : window.place(mark.get().atMs(), bound);
    }

    /** Own default: somebody who presses on the page Now looks, walks over and presses. */
    private static final long BY_EYE_MS = 1_000;
}

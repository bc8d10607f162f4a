package org.skeinday.contest;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.timing.FlightWindow;
import org.skeinday.timing.HoldRule;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code rules.set}: which flights of an event are official, what becomes of contacts and collisions, and what parts
 * entries of equal score.
 *
 * @param heldWatchedMs how long a model that the building holds is watched until its flight is over; null when the rules
 *     say nothing of it
 * @param heldDeductMs what is then deducted; null for all that was watched
 * @param repeatsPerFlight how often a flight shorter than the event's minimum may be tried again, 0 to 10
 * @param repeatsInAll how many such repeats an entry has in all, 0 to 500; null for no such limit
 * @param ifShort no-time or counts: what a short flight is when no repeat is left
 * @param collision stands (a collision changes nothing) or choice (the entry keeps its time or flies again)
 * @param collisionMs how long it may choose, 1 to 3,600,000 ms
 * @param ifSilent keep or again: what holds when it chose nothing
 * @param ties shared, best (the best single time) or next (the best single time, then the next)
 * @param dropBest how many of the best attempts do not count in the mean of all, 0 to 5
 * @param dropWorst how many of the worst, 0 to 5
 * @param lastCallMs how long before a window closes the last call is made, 0 to 3,600,000 ms; 0 for none
 * @param inside release or landing: which of them must lie inside the window
 */
public record FlightRules(
        String eventId,
        @Nullable Long heldWatchedMs,
        @Nullable Long heldDeductMs,
        int repeatsPerFlight,
        @Nullable Integer repeatsInAll,
        String ifShort,
        String collision,
        long collisionMs,
        String ifSilent,
        String ties,
        int dropBest,
        int dropWorst,
        long lastCallMs,
        String inside) {
    public static final List<String> IF_SHORT = List.of("no-time", "counts");
    public static final List<String> COLLISION = List.of("stands", "choice");
    public static final List<String> IF_SILENT = List.of("keep", "again");
    public static final List<String> TIES = List.of("next", "best", "shared");
    public static final List<String> INSIDE = List.of("release", "landing");
    /** Own default, no source. */
    public static final long COLLISION_MS = 60_000;

    public FlightRules {
        Preconditions.within("Repeats of a flight", repeatsPerFlight, 0, 10);
        if (repeatsInAll != null) {
            Preconditions.within("Repeats in all", repeatsInAll, 0, 500);
        }
        Preconditions.oneOf("What a second short flight is", ifShort, IF_SHORT);
        Preconditions.oneOf("What a collision means", collision, COLLISION);
        Preconditions.within("The time to choose in ms", collisionMs, 1, 3_600_000);
        Preconditions.oneOf("What holds without a choice", ifSilent, IF_SILENT);
        Preconditions.oneOf("What parts ties", ties, TIES);
        Preconditions.within("The best attempts dropped", dropBest, 0, 5);
        Preconditions.within("The worst attempts dropped", dropWorst, 0, 5);
        Preconditions.within("The last call in ms", lastCallMs, 0, 3_600_000);
        Preconditions.oneOf("What must lie inside the window", inside, INSIDE);
        if (heldWatchedMs != null) {
            hold(heldWatchedMs, heldDeductMs);
        }
    }

    /** What holds for an event that says nothing. */
    public static FlightRules usual(String eventId) {
        return new FlightRules(
                eventId,
                null,
                null,
                0,
                null,
                "no-time",
                "stands",
                COLLISION_MS,
                "keep",
                "next",
                0,
                0,
                FlightWindow.LAST_CALL_MS,
                "release");
    }

    /** Empty when the rules say nothing of models that the building holds. */
    public Optional<HoldRule> hold() {
        return heldWatchedMs == null ? Optional.empty() : Optional.of(hold(heldWatchedMs, heldDeductMs));
    }

    private static HoldRule hold(long watchedMs, @Nullable Long deductMs) {
        return new HoldRule(watchedMs, deductMs == null ? watchedMs : deductMs);
    }

    public boolean letsChoose() {
        return collision.equals("choice");
    }

    /** Whether the landing must lie inside the window, and not the release alone. */
    public boolean mustLandInside() {
        return inside.equals("landing");
    }

    /** Whether best or worst attempts are dropped and the mean of the rest counts. */
    public boolean drops() {
        return dropBest + dropWorst > 0;
    }

    /** A window with these rules' last call, which is never before it opens. */
    public FlightWindow window(WindowAdded window) {
        return new FlightWindow(
                window.opensAtMs(),
                window.closesAtMs(),
                Math.min(lastCallMs, window.closesAtMs() - window.opensAtMs()));
    }
}

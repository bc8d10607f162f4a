package org.skeinday.contest;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.timing.FlightWindow;
import org.skeinday.timing.HoldRule;
import org.skeinday.units.EnumWords;
import org.skeinday.units.FlightTime;
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
 * @param ifCaught runs-on (the clock runs until the landing), less (once it was watched for long enough the flight is over,
 *     less a deduction) or ends (the flight is over when it is caught); null in rules of an earlier program, which said it by
 *     {@code heldWatchedMs} alone
 * @param startAgain no or yes: whether a flight that ended early so may be flown again; null where nobody said
 * @param inside release or landing: which of them must lie inside the window
 * @param meanRanks exact (means are ordered as they are) or rounded (as they are shown, to the hundredth of a second); null
 *     where nobody said: then a mean of the best is ordered exactly, one without best and worst as rounded
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
        String inside,
        @Nullable String ifCaught,
        @Nullable String startAgain,
        @Nullable String meanRanks) {
    /** A flight below the minimum without a repeat left. */
    public enum IfShort {
        /** It uses up an official flight and brings no time. */
        NO_TIME,
        /** Its time counts as it is. */
        COUNTS
    }

    /** What a collision means. */
    public enum AfterCollision {
        STANDS,
        CHOICE
    }

    /** What holds for an entry that chose nothing. */
    public enum IfSilent {
        KEEP,
        AGAIN
    }

    /** What parts entries of equal score. */
    public enum Ties {
        NEXT,
        BEST,
        SHARED
    }

    /** What must lie inside the window. */
    public enum Inside {
        RELEASE,
        LANDING
    }

    /** What becomes of the clock when the building, or somebody, holds the model. */
    public enum IfCaught {
        RUNS_ON,
        LESS,
        ENDS
    }

    /** Whether a flight that ended early may be flown again. */
    public enum StartAgain {
        NO,
        YES
    }

    /** By what entries are ordered whose score is a mean. */
    public enum MeanRanks {
        EXACT,
        ROUNDED
    }

    public static final List<String> MEAN_RANKS = EnumWords.of(MeanRanks.class);
    public static final List<String> IF_CAUGHT = EnumWords.of(IfCaught.class);
    public static final List<String> START_AGAIN = EnumWords.of(StartAgain.class);
    public static final List<String> IF_SHORT = EnumWords.of(IfShort.class);
    public static final List<String> COLLISION = EnumWords.of(AfterCollision.class);
    public static final List<String> IF_SILENT = EnumWords.of(IfSilent.class);
    public static final List<String> TIES = EnumWords.of(Ties.class);
    public static final List<String> INSIDE = EnumWords.of(Inside.class);
    /** Own default, no source. */
    public static final long COLLISION_MS = 60_000;

    private static final String SECOND_SHORT = "What a second short flight is";
    private static final String A_COLLISION = "What a collision means";
    private static final String WITHOUT_A_CHOICE = "What holds without a choice";
    private static final String PARTS_TIES = "What parts ties";
    private static final String WHEN_CAUGHT = "What becomes of a model that is caught";
    private static final String AGAIN = "Whether it may start again";
    private static final String MEANS_RANK = "How means are ordered";
    private static final String LIES_INSIDE = "What must lie inside the window";

    public FlightRules {
        Preconditions.within("Repeats of a flight", repeatsPerFlight, 0, 10);
        if (repeatsInAll != null) {
            Preconditions.within("Repeats in all", repeatsInAll, 0, 500);
        }
        Preconditions.oneOf(SECOND_SHORT, ifShort, IF_SHORT);
        Preconditions.oneOf(A_COLLISION, collision, COLLISION);
        Preconditions.within("The time to choose in ms", collisionMs, 1, 3_600_000);
        Preconditions.oneOf(WITHOUT_A_CHOICE, ifSilent, IF_SILENT);
        Preconditions.oneOf(PARTS_TIES, ties, TIES);
        Preconditions.within("The best attempts dropped", dropBest, 0, 5);
        Preconditions.within("The worst attempts dropped", dropWorst, 0, 5);
        Preconditions.within("The last call in ms", lastCallMs, 0, 3_600_000);
        Preconditions.oneOf(LIES_INSIDE, inside, INSIDE);
        if (heldWatchedMs != null) {
            hold(heldWatchedMs, heldDeductMs);
        }
        if (ifCaught != null) {
            Preconditions.oneOf(WHEN_CAUGHT, ifCaught, IF_CAUGHT);
        }
        if (startAgain != null) {
            Preconditions.oneOf(AGAIN, startAgain, START_AGAIN);
        }
        if (meanRanks != null) {
            Preconditions.oneOf(MEANS_RANK, meanRanks, MEAN_RANKS);
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
                EnumWords.of(IfShort.NO_TIME),
                EnumWords.of(AfterCollision.STANDS),
                COLLISION_MS,
                EnumWords.of(IfSilent.KEEP),
                EnumWords.of(Ties.NEXT),
                0,
                0,
                FlightWindow.LAST_CALL_MS,
                EnumWords.of(Inside.RELEASE),
                null,
                null,
                null);
    }

    /** Empty when the clock runs on while the model is held. */
    public Optional<HoldRule> hold() {
        return switch (ifCaughtRule()) {
            case RUNS_ON -> Optional.empty();
            case ENDS -> Optional.of(HoldRule.AT_ONCE);
            case LESS -> Optional.of(heldWatchedMs == null ? HoldRule.TEN_SECONDS : hold(heldWatchedMs, heldDeductMs));
        };
    }

    public IfCaught ifCaughtRule() {
        if (ifCaught == null) {
            return heldWatchedMs == null ? IfCaught.RUNS_ON : IfCaught.LESS;
        }
        return EnumWords.parse(WHEN_CAUGHT, IfCaught.class, ifCaught);
    }

    /** Whether a flight that ended early because the model was caught may be flown again; none does where the clock runs on. */
    public boolean letsStartAgain() {
        return hold().isPresent()
                && startAgain != null
                && EnumWords.parse(AGAIN, StartAgain.class, startAgain) == StartAgain.YES;
    }

    /** Whether this flight may: one that came free in time was not ended by it. @param heldMs null when it was not held */
    public boolean letsStartAgain(@Nullable Long heldMs) {
        return letsStartAgain()
                && heldMs != null
                && hold().filter(rule -> heldMs >= rule.watchedMs()).isPresent();
    }

    /** What happens to a model that is caught, as a sentence with a worked case. */
    public String caughtWords() {
        return switch (ifCaughtRule()) {
            case RUNS_ON -> "the clock runs until the landing: caught at 0:40 and down at 1:00 is 1:00";
            case ENDS -> "the flight is over when it is caught: caught at 0:40 is 0:40" + againWords();
            case LESS -> {
                HoldRule rule = hold().orElseThrow();
                long over = 40_000 + rule.watchedMs();
                yield "over once it was held for " + seconds(rule.watchedMs()) + ", less " + seconds(rule.deductMs())
                        + ": caught at 0:40 and held until " + new FlightTime(over).text(0) + " is "
                        + new FlightTime(over - rule.deductMs()).text(0) + againWords();
            }
        };
    }

    private String againWords() {
        return letsStartAgain() ? "; it may start again" : "; it does not start again";
    }

    private static String seconds(long ms) {
        return new FlightTime(ms).seconds(ms % 1000 == 0 ? 0 : 1) + " s";
    }

    private static HoldRule hold(long watchedMs, @Nullable Long deductMs) {
        return new HoldRule(watchedMs, deductMs == null ? watchedMs : deductMs);
    }

    public IfShort ifShortRule() {
        return EnumWords.parse(SECOND_SHORT, IfShort.class, ifShort);
    }

    public IfSilent ifSilentRule() {
        return EnumWords.parse(WITHOUT_A_CHOICE, IfSilent.class, ifSilent);
    }

    public Ties tiesRule() {
        return EnumWords.parse(PARTS_TIES, Ties.class, ties);
    }

    public boolean letsChoose() {
        return EnumWords.parse(A_COLLISION, AfterCollision.class, collision) == AfterCollision.CHOICE;
    }

    /** Whether the landing must lie inside the window, and not the release alone. */
    public boolean mustLandInside() {
        return EnumWords.parse(LIES_INSIDE, Inside.class, inside) == Inside.LANDING;
    }

    /** Whether best or worst attempts are dropped and the mean of the rest counts. */
    public boolean drops() {
        return dropBest + dropWorst > 0;
    }

    /** By what means are ordered; where nobody said, as the program always did. */
    public MeanRanks meanRanksRule() {
        if (meanRanks == null) {
            return drops() ? MeanRanks.ROUNDED : MeanRanks.EXACT;
        }
        return EnumWords.parse(MEANS_RANK, MeanRanks.class, meanRanks);
    }

    /** A window with these rules' last call, which is never before it opens. */
    public FlightWindow window(WindowAdded window) {
        return new FlightWindow(
                window.opensAtMs(),
                window.closesAtMs(),
                Math.min(lastCallMs, window.closesAtMs() - window.opensAtMs()));
    }
}

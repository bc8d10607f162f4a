package org.skeinday.contest;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.Take;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code event.added}: a day and its rules.
 *
 * @param kind visiting, hosting or practice
 * @param day ISO date, for example 2026-11-28
 * @param ceilingMm height of the hall, as typed in {@code ceilingTyped}
 * @param attempts attempts of each entry, 1 to 20; a practice day keeps the number and ignores it
 * @param windowMinutes length of a window, 0 when there is none
 * @param score best, sum or mean of the {@code bestOf} best attempts
 * @param timekeepers watches on each flight, 1 to 3
 * @param take middle, mean, longer or shorter of the watches
 * @param ifTwo mean, longer or shorter when only two watches count
 * @param roundToMs step of the rounding, for example 100 for 0.1 s
 * @param rounding down, up or nearest (half up)
 * @param roundWatchesFirst whether each watch is rounded, or the result
 * @param minimumMs a shorter flight is no official flight
 * @param winderRatio motor turns to one crank turn
 * @param laneMm winding lane hook to hook, as typed in {@code laneTyped}
 */
public record EventAdded(
        String id,
        String name,
        String kind,
        String day,
        @Nullable String hall,
        @Nullable Double ceilingMm,
        @Nullable String ceilingTyped,
        int attempts,
        int windowMinutes,
        String score,
        int bestOf,
        int timekeepers,
        String take,
        String ifTwo,
        long roundToMs,
        String rounding,
        boolean roundWatchesFirst,
        long minimumMs,
        double winderRatio,
        @Nullable Double laneMm,
        @Nullable String laneTyped) {
    public static final List<String> KINDS = EnumWords.of(DayKind.class);
    public static final List<String> SCORES = EnumWords.of(ScoreKind.class);
    public static final List<String> TAKES = EnumWords.of(Take.class);
    /** Two watches have no middle. */
    public static final List<String> IF_TWO =
            TAKES.stream().filter(word -> !word.equals(Take.MIDDLE.word())).toList();

    public static final List<String> ROUNDINGS = EnumWords.of(Rounding.class);

    public EventAdded {
        Preconditions.filled("The event's name", name);
        Preconditions.oneOf("The kind of day", kind, KINDS);
        Preconditions.oneOf("The score", score, SCORES);
        Preconditions.oneOf("The time taken", take, TAKES);
        Preconditions.oneOf("The time taken of two", ifTwo, IF_TWO);
        Preconditions.oneOf("The rounding", rounding, ROUNDINGS);
        Preconditions.within("The number of attempts", attempts, 1, 20);
        Preconditions.within("The window in minutes", windowMinutes, 0, 600);
        Preconditions.within("The number of best attempts that count", bestOf, 1, attempts);
        Preconditions.within("The number of timekeepers", timekeepers, 1, 3);
        Preconditions.within("The rounding step in ms", roundToMs, 1, 60_000);
        Preconditions.within("The minimum duration in ms", minimumMs, 0, 3_600_000);
        Preconditions.within("The winder's ratio", winderRatio, 1, 50);
    }

    /** Whether both score and time flights alike; the name, the hall and the winding place are no rules. */
    public boolean hasRulesOf(EventAdded other) {
        return kind.equals(other.kind)
                && attempts == other.attempts
                && windowMinutes == other.windowMinutes
                && score.equals(other.score)
                && bestOf == other.bestOf
                && timekeepers == other.timekeepers
                && take.equals(other.take)
                && ifTwo.equals(other.ifTwo)
                && roundToMs == other.roundToMs
                && rounding.equals(other.rounding)
                && roundWatchesFirst == other.roundWatchesFirst
                && minimumMs == other.minimumMs;
    }

    public DayKind dayKind() {
        return DayKind.of(kind);
    }

    public ScoreKind scoreKind() {
        return EnumWords.parse("The score", ScoreKind.class, score);
    }

    public Take takeRule() {
        return EnumWords.parse("The time taken", Take.class, take);
    }

    public Take ifTwoRule() {
        return EnumWords.parse("The time taken of two", Take.class, ifTwo);
    }

    public Rounding roundingRule() {
        return EnumWords.parse("The rounding", Rounding.class, rounding);
    }

    /** A practice night: nothing of it is official. */
    public boolean ofPractice() {
        return dayKind() == DayKind.PRACTICE;
    }
}

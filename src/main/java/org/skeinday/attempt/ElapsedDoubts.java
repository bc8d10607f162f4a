package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Unlikely;
import org.skeinday.units.FlightTime;

/**
 * What of a watch's time cannot be, by what the server itself saw: a time that is longer than has passed since the release,
 * and a stop that came with the press for the release.
 */
public final class ElapsedDoubts {
    /** A stop that comes sooner is a double press and no flight (own default). */
    public static final long DOUBLE_PRESS_MS = 1_000;

    /** A hand watch is read and typed, and people press neither at once nor together (own default). */
    private static final long SLACK_MS = 1_000;

    private static final long TENTH_MS = 100;

    private ElapsedDoubts() {}

    /** One sentence for each watch that counts and nobody has judged. */
    static List<String> of(Timed timed) {
        Set<Integer> aside = Readings.setAside(timed.judged());
        Optional<WatchMarked> release = timed.marks().release(aside).filter(mark -> mark.boundMs() != null);
        List<String> doubts = new ArrayList<>();
        for (ReadingTaken reading : Readings.thatCount(timed)) {
            if (JudgedReadings.word(reading, timed).isPresent()) {
                continue;
            }
            release.flatMap(mark -> tooLong(reading, mark))
                    .or(() -> timed.marks().apart(reading).map(apart -> apart(reading, apart)))
                    .ifPresent(doubts::add);
            doublePress(reading).ifPresent(doubts::add);
        }
        return doubts;
    }

    /**
     * The same of a time that was taken all the same: it is a doubted number of its flight until somebody confirms it.
     *
     * @param officialMs null while it has none
     * @param releasedMs when a watch saw it go, null where nobody knows to a bound
     */
    public static Optional<Doubted> official(
            @Nullable Long officialMs, @Nullable Long releasedMs, List<ReadingTaken> readings) {
        if (officialMs == null || releasedMs == null || readings.isEmpty()) {
            return Optional.empty();
        }
        long lastMs = 0;
        for (ReadingTaken reading : readings) {
            Long at = reading.atMs();
            lastMs = Math.max(lastMs, at == null ? Long.MAX_VALUE : at);
        }
        long passed = Math.max(0, lastMs - releasedMs);
        return lastMs == Long.MAX_VALUE || officialMs <= passed + 2 * SLACK_MS
                ? Optional.empty()
                : Optional.of(new Doubted(
                        Unlikely.LONGER_THAN_PASSED,
                        new FlightTime(officialMs).text(1) + " is longer than had passed since the release, "
                                + new FlightTime(passed / TENTH_MS * TENTH_MS).text(1)));
    }

    /**
     * How much longer a watch's flight lasted by the server's own moments of its release and landing, ms; negative where it was
     * shorter. Empty within what the clocks and a second of people can be off, and where a moment is not known to a bound.
     */
    public static Optional<Long> apart(
            long durationMs, WatchMarked release, long landedMs, @Nullable Long landedBoundMs) {
        Long released = release.boundMs();
        if (released == null || landedBoundMs == null) {
            return Optional.empty();
        }
        long apart = landedMs - release.atMs() - durationMs;
        return Math.abs(apart) > released + landedBoundMs + SLACK_MS ? Optional.of(apart) : Optional.empty();
    }

    private static String apart(ReadingTaken reading, long apartMs) {
        long passed = Math.max(0, reading.durationMs() + apartMs);
        return "Watch " + reading.slot() + " says " + text(reading) + ", but by the laptop's clock "
                + new FlightTime(passed / TENTH_MS * TENTH_MS).text(1)
                + " passed between its release and its landing. Ask its timekeeper.";
    }

    /** A release whose moment nobody knows to a bound says nothing of what has passed. */
    private static Optional<String> tooLong(ReadingTaken reading, WatchMarked release) {
        Long atMs = reading.atMs();
        Long bound = release.boundMs();
        if (atMs == null || bound == null) {
            return Optional.empty();
        }
        long passed = Math.max(0, atMs - release.atMs());
        return reading.durationMs() <= passed + bound + SLACK_MS
                ? Optional.empty()
                : Optional.of("Watch " + reading.slot() + " says " + text(reading) + ", but when that came in, "
                        + new FlightTime(passed / TENTH_MS * TENTH_MS).text(1)
                        + " had passed since the release. Ask its timekeeper.");
    }

    private static Optional<String> doublePress(ReadingTaken reading) {
        boolean ownWatch = !reading.instrument().equals(ReadingTaken.HAND_WATCH);
        return ownWatch && reading.durationMs() < DOUBLE_PRESS_MS
                ? Optional.of("Watch " + reading.slot() + " was stopped " + text(reading)
                        + " after the release: was it pressed twice? Ask its timekeeper.")
                : Optional.empty();
    }

    private static String text(ReadingTaken reading) {
        return new FlightTime(reading.durationMs()).text(2);
    }
}

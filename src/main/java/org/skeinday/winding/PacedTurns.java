package org.skeinday.winding;

import org.jspecify.annotations.Nullable;

/**
 * What a metronome's beats come to: a suggestion for the counts, never a count.
 *
 * @param atFull crank turns at the first step in, null when nobody tapped it
 * @param stop crank turns when cranking ended, null when nobody knows when
 */
public record PacedTurns(@Nullable Integer atFull, @Nullable Integer stop) {
    public static PacedTurns of(Wind wind, Beats beats) {
        WindTimes times = wind.times();
        return new PacedTurns(turns(beats, times.steppedIn()), turns(beats, times.stopped()));
    }

    private static @Nullable Integer turns(Beats beats, @Nullable Long elapsedMs) {
        return elapsedMs == null ? null : beats.crankTurns(elapsedMs);
    }
}

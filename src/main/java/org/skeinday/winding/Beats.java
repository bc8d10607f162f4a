package org.skeinday.winding;

import org.skeinday.units.Preconditions;

/**
 * A metronome's beats, for practice. Each is reckoned from the first, so that no error adds up.
 *
 * @param crankTurnsPerMinute 20 to 200
 * @param beatsPerCrankTurn 1 to 8
 */
public record Beats(int crankTurnsPerMinute, int beatsPerCrankTurn) {
    public Beats {
        Preconditions.within("Crank turns per minute", crankTurnsPerMinute, 20, 200);
        Preconditions.within("Beats per crank turn", beatsPerCrankTurn, 1, 8);
    }

    /** One beat for each crank turn. */
    public static Beats perMinute(int crankTurns) {
        return new Beats(crankTurns, 1);
    }

    /** Whole crank turns made {@code elapsedMs} after beat 0, turn n with beat n · beatsPerCrankTurn; 0 to one day. */
    public int crankTurns(long elapsedMs) {
        Preconditions.within("Milliseconds since beat 0", elapsedMs, 0, WindMark.MOST_ELAPSED_MS);
        return (int) (elapsedMs * crankTurnsPerMinute / 60_000);
    }

    /** When beat {@code k} sounds, in s after beat 0: one division of whole numbers. */
    public double seconds(long k) {
        Preconditions.within("The beat", k, 0, 1e9);
        return k * 60.0 / (crankTurnsPerMinute * beatsPerCrankTurn);
    }
}

package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.noted}: what is kept of a wind and its flight beside the states and times.
 *
 * @param spareMotorId the motor that stood by
 * @param peakTorqueNmm the highest while winding, as typed in {@code peakTorqueTyped}
 * @param backOffCrankTurns taken off again, may be a fraction
 * @param remainingCrankTurns counted after landing, may be a fraction
 * @param contacts what the model touched and when, in words
 * @param announcedMs the time that officials elsewhere announced, milliseconds
 * @param announcedAtMs when they did: the time to protest runs from here
 * @param fromPaper whether a card was keyed in
 */
public record AttemptNoted(
        String attemptId,
        @Nullable String spareMotorId,
        @Nullable Double peakTorqueNmm,
        @Nullable String peakTorqueTyped,
        @Nullable Double backOffCrankTurns,
        @Nullable Double remainingCrankTurns,
        @Nullable String contacts,
        @Nullable String note,
        @Nullable Long announcedMs,
        @Nullable Long announcedAtMs,
        boolean fromPaper) {
    public AttemptNoted {
        Preconditions.within("A time in ms", announcedMs, 0, ReadingTaken.LONGEST_MS);
    }

    /** Nothing noted yet. */
    public static AttemptNoted blank(String attemptId) {
        return new AttemptNoted(attemptId, null, null, null, null, null, null, null, null, null, false);
    }

    /** What a card says, and where it says nothing what was noted before. */
    public AttemptNoted over(AttemptNoted before) {
        boolean peak = peakTorqueNmm != null;
        return new AttemptNoted(
                attemptId,
                either(spareMotorId, before.spareMotorId),
                peak ? peakTorqueNmm : before.peakTorqueNmm,
                peak ? peakTorqueTyped : before.peakTorqueTyped,
                either(backOffCrankTurns, before.backOffCrankTurns),
                either(remainingCrankTurns, before.remainingCrankTurns),
                either(contacts, before.contacts),
                either(note, before.note),
                either(announcedMs, before.announcedMs),
                either(announcedAtMs, before.announcedAtMs),
                fromPaper || before.fromPaper);
    }

    private static <T> @Nullable T either(@Nullable T one, @Nullable T other) {
        return one == null ? other : one;
    }

    /** The same with what the wind came to. */
    public AttemptNoted wound(@Nullable Double peakNmm, @Nullable String peakTyped, @Nullable Double backOff) {
        return new AttemptNoted(
                attemptId,
                spareMotorId,
                peakNmm,
                peakTyped,
                backOff,
                remainingCrankTurns,
                contacts,
                note,
                announcedMs,
                announcedAtMs,
                fromPaper);
    }

    /** The same with the crank turns left after the landing. */
    public AttemptNoted left(@Nullable Double remaining) {
        return new AttemptNoted(
                attemptId,
                spareMotorId,
                peakTorqueNmm,
                peakTorqueTyped,
                backOffCrankTurns,
                remaining,
                contacts,
                note,
                announcedMs,
                announcedAtMs,
                fromPaper);
    }

    /** The same with what the model touched, in words. */
    public AttemptNoted touched(String words) {
        return new AttemptNoted(
                attemptId,
                spareMotorId,
                peakTorqueNmm,
                peakTorqueTyped,
                backOffCrankTurns,
                remainingCrankTurns,
                words,
                note,
                announcedMs,
                announcedAtMs,
                fromPaper);
    }

    /** The same with what officials announced. */
    public AttemptNoted announced(long ms, long atMs) {
        return new AttemptNoted(
                attemptId,
                spareMotorId,
                peakTorqueNmm,
                peakTorqueTyped,
                backOffCrankTurns,
                remainingCrankTurns,
                contacts,
                note,
                ms,
                atMs,
                fromPaper);
    }
}

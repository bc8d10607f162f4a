package org.skeinday.motor;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code motor.step}: something was done to a motor.
 *
 * @param deed and {@code stage}: words of {@link MotorDeed} and {@link MotorStage}
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 * @param waitName what began with it, with its seconds as they were asked for then; null when nothing is waited for
 * @param waitedMs how long the wait before it had lasted, null when there was none
 * @param reason why it was done so early, or so at all
 * @param motorTurns in the motor, at a break
 * @param torqueNmm at a break, as typed in {@code torqueTyped}, read from {@code meter}
 * @param beforeId the step that stood before this one
 * @param parted of a break: where, a word of {@link BreakPlace}; null while nobody looked
 * @param test of a break: whether the coach said that it was a break test; null while nobody said so
 */
public record MotorStep(
        String id,
        String motorId,
        String deed,
        String stage,
        long atMs,
        @Nullable String personId,
        String device,
        @Nullable String waitName,
        @Nullable Integer minimumS,
        @Nullable Integer preferredS,
        @Nullable Integer maximumS,
        boolean required,
        @Nullable Long waitedMs,
        @Nullable String reason,
        @Nullable Double motorTurns,
        @Nullable Double torqueNmm,
        @Nullable String torqueTyped,
        @Nullable String meter,
        @Nullable String beforeId,
        @Nullable String parted,
        @Nullable Boolean test) {

    /** Who did it, when, and the id of the step. */
    public record By(String id, long atMs, String person, String device) {}

    /** What came with it: why, and turns and torque at a break. */
    public record Told(
            @Nullable String reason,
            @Nullable Double motorTurns,
            @Nullable Double torqueNmm,
            @Nullable String torqueTyped) {
        public static final Told NOTHING = new Told(null, null, null, null);
    }

    /** This break with what was found of it since. @param torqueTyped as the marks came to */
    public MotorStep brokeAt(
            @Nullable Double turns, @Nullable Double torque, @Nullable String typed, @Nullable String readOn) {
        return new MotorStep(
                id,
                motorId,
                deed,
                stage,
                atMs,
                personId,
                device,
                waitName,
                minimumS,
                preferredS,
                maximumS,
                required,
                waitedMs,
                reason,
                turns,
                torque,
                typed,
                torque == null ? null : readOn,
                beforeId,
                parted,
                test);
    }

    /**
     * This break with where somebody saw it part. Once the coach has said what it was, that alone says whether the cause lay
     * in the rubber and where outside it.
     */
    public MotorStep partedAt(BreakPlace place) {
        boolean against = coachHasSpoken() && (!saysOfTheRubber() || place.isOutsideTheRubber());
        return against ? this : told(place, test);
    }

    /** Whether the coach has said what this break was. */
    public boolean coachHasSpoken() {
        return test != null;
    }

    /** What it counts as, as far as somebody has said it. */
    public Optional<BreakCause> cause() {
        BreakPlace place = parted == null ? BreakPlace.UNKNOWN : BreakPlace.of(parted);
        if (place.isOutsideTheRubber()) {
            return Optional.of(BreakCause.of(place.word()));
        }
        return parted == null && test == null
                ? Optional.empty()
                : Optional.of(Boolean.TRUE.equals(test) ? BreakCause.TEST : BreakCause.ACCIDENT);
    }

    /** This break with what the coach says of it. */
    public MotorStep by(BreakCause cause) {
        BreakPlace seen = parted == null ? BreakPlace.UNKNOWN : BreakPlace.of(parted);
        BreakPlace place = cause.place(seen);
        return told(parted == null && place == seen ? null : place, cause == BreakCause.TEST);
    }

    /** This break where it is known to have been a break test, as its wind says it. */
    public MotorStep asTest() {
        return told(parted == null ? null : BreakPlace.of(parted), true);
    }

    private MotorStep told(@Nullable BreakPlace place, @Nullable Boolean wasTest) {
        return new MotorStep(
                id,
                motorId,
                deed,
                stage,
                atMs,
                personId,
                device,
                waitName,
                minimumS,
                preferredS,
                maximumS,
                required,
                waitedMs,
                reason,
                motorTurns,
                torqueNmm,
                torqueTyped,
                meter,
                beforeId,
                place == null ? null : place.word(),
                wasTest);
    }

    /** Whether this break is one of the rubber: it is unless the coach has named a cause outside it. */
    public boolean saysOfTheRubber() {
        return !coachHasSpoken() || !wasSeenOutsideTheRubber();
    }

    /** Whether somebody saw it part outside the rubber, the coach or anybody else. */
    public boolean wasSeenOutsideTheRubber() {
        return parted != null && BreakPlace.of(parted).isOutsideTheRubber();
    }

    public MotorStage stageNow() {
        return MotorStage.of(stage);
    }

    /** What is waited for since this step, null when nothing is. */
    public @Nullable Wait waiting() {
        return waitName == null || minimumS == null || preferredS == null
                ? null
                : new Wait(waitName, minimumS, preferredS, maximumS, required);
    }
}

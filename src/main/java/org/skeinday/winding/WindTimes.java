package org.skeinday.winding;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When a wind went from phase to phase, in ms since the first crank turn; null where it did not or nobody said. Phases
 * go forward only; {@code again} and {@code back-on} alone go back; after a break
 * {@code again} takes the break back and puts no turns on. A tap that says what is already so changes nothing.
 */
record WindTimes(
        Wind.Phase now,
        @Nullable Long steppedIn,
        @Nullable Long stopped,
        @Nullable Long backedOff,
        @Nullable Long broke,
        @Nullable Long offMeter) {
    private static final WindTimes BEGUN =
            new WindTimes(Wind.Phase.WINDING_AT_FULL_STRETCH, null, null, null, null, null);

    /** As tapped. */
    static WindTimes said(List<WindPhase> inOrder) {
        WindTimes times = BEGUN;
        for (WindPhase phase : inOrder) {
            times = times.after(phase);
        }
        return times;
    }

    private WindTimes after(WindPhase tap) {
        long at = tap.elapsedMs();
        return switch (tap.phase()) {
            case WindPhase.STEPPING_IN ->
                before(Wind.Phase.WALKING_IN) ? new WindTimes(Wind.Phase.WALKING_IN, at, null, null, null, null) : this;
            case WindPhase.STOPPED ->
                before(Wind.Phase.STOPPED) ? new WindTimes(Wind.Phase.STOPPED, steppedIn, at, null, null, null) : this;
            case WindPhase.BACKED_OFF ->
                before(Wind.Phase.HOLDING)
                        ? new WindTimes(Wind.Phase.HOLDING, steppedIn, stopped, at, null, null)
                        : this;
            case WindPhase.BROKE ->
                before(Wind.Phase.BROKE)
                        ? new WindTimes(Wind.Phase.BROKE, steppedIn, stopped, backedOff, at, null)
                        : this;
            case WindPhase.OFF_METER ->
                before(Wind.Phase.OFF_METER)
                        ? new WindTimes(Wind.Phase.OFF_METER, steppedIn, stopped, backedOff, broke, at)
                        : this;
            case WindPhase.BACK_ON -> backOn();
            default -> again();
        };
    }

    /** What broke does not hang anywhere again. The last turn stays the last one, and so does the back-off. */
    private WindTimes backOn() {
        return now != Wind.Phase.OFF_METER || broke != null
                ? this
                : new WindTimes(Wind.Phase.HOLDING, steppedIn, stopped, backedOff, null, null);
    }

    private WindTimes again() {
        if (broke != null) {
            return notBroken();
        }
        if (before(Wind.Phase.STOPPED) || now == Wind.Phase.OFF_METER) {
            return this;
        }
        Wind.Phase winding = steppedIn == null ? Wind.Phase.WINDING_AT_FULL_STRETCH : Wind.Phase.WALKING_IN;
        return new WindTimes(winding, steppedIn, null, null, null, null);
    }

    /** It stands where it stood before somebody said that it broke: what was held is held since then. */
    private WindTimes notBroken() {
        Wind.Phase before = steppedIn == null ? Wind.Phase.WINDING_AT_FULL_STRETCH : Wind.Phase.WALKING_IN;
        if (backedOff != null) {
            before = Wind.Phase.HOLDING;
        } else if (stopped != null) {
            before = Wind.Phase.STOPPED;
        }
        return new WindTimes(before, steppedIn, stopped, backedOff, null, null);
    }

    /** From here on the needle says nothing of the motor; null while it does. */
    @Nullable
    Long needleEnds() {
        return broke == null ? offMeter : broke;
    }

    private boolean before(Wind.Phase phase) {
        return now.compareTo(phase) < 0;
    }

    /**
     * What nobody tapped, from the needle: cranking ended with the last mark up before the next phase, the back-off with
     * the last mark down before the motor left the meter. A break ends the cranking.
     *
     * @param over the wind is known to be over, since its count was entered
     * @param nothingTakenOff so counted
     */
    WindTimes filled(List<Crossing> crossings, boolean over, boolean nothingTakenOff) {
        @Nullable Long stop = stopped;
        @Nullable Long next = backedOff == null ? offMeter : backedOff;
        if (stop == null && backedOff == null && broke != null) {
            stop = broke;
        } else if (stop == null && (next != null || over)) {
            stop = last(crossings, true, -1, next == null ? Long.MAX_VALUE : next, next);
        }
        @Nullable Long off = backedOff;
        if (off == null && stop != null && offMeter != null && broke == null) {
            off = nothingTakenOff ? stop : last(crossings, false, stop, offMeter, stop);
        }
        return new WindTimes(now, steppedIn, stop, off, broke, offMeter);
    }

    private static @Nullable Long last(
            List<Crossing> crossings, boolean rose, long after, long until, @Nullable Long otherwise) {
        return crossings.stream()
                .filter(c -> c.rose() == rose && c.elapsedMs() > after && c.elapsedMs() <= until)
                .map(Crossing::elapsedMs)
                .reduce((a, b) -> b)
                .orElse(otherwise);
    }
}

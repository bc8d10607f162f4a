package org.skeinday.attempt;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.DayKind;
import org.skeinday.motor.BreakPlace;
import org.skeinday.winding.Wind;

/**
 * What the record knows of one attempt: all that its phase is made of. Read once for a page, in one snapshot.
 *
 * @param steps when it took its steps
 * @param winds of the attempt, in the order in which they were begun; the needle's marks are not among them
 * @param motorBrokeAtMs when its present motor broke, null while it did not
 * @param breaks what was told after motors of this attempt parted, each motor once
 * @param runBacks motors of this attempt that were run back, with the turns that were on, in order
 * @param turnsOn whether its motor was wound when it was given up and nobody has said that it was run back
 * @param timed its watches
 * @param watchesWanted as many as the rules ask for
 * @param signaturesMissing that are still owed for its time; 0 where none are asked for
 */
public record AttemptEvidence(
        AttemptNow now,
        DayKind day,
        StepTimes steps,
        List<Wind> winds,
        @Nullable Long motorBrokeAtMs,
        List<BreakTold> breaks,
        List<TurnsRunBack> runBacks,
        boolean turnsOn,
        Timed timed,
        int watchesWanted,
        int signaturesMissing) {
    /**
     * What people said after a motor parted.
     *
     * @param peopleSafe whether everyone is unhurt and both ends are found
     * @param where it parted, null until somebody looked
     */
    public record BreakTold(
            String motorId, boolean peopleSafe, @Nullable BreakPlace where) {}

    public AttemptEvidence {
        winds = List.copyOf(winds);
        breaks = List.copyOf(breaks);
        runBacks = List.copyOf(runBacks);
    }

    /** Of the motor that it has now; nothing while nobody spoke. */
    BreakTold breakOf(String motor) {
        return breaks.stream()
                .filter(told -> told.motorId().equals(motor))
                .findFirst()
                .orElseGet(() -> new BreakTold(motor, false, null));
    }

    /** Winds that ended before the present one: their motor broke, was changed, or was run back. */
    int windsOver() {
        long read = winds.stream().filter(this::isOver).count();
        long unread = runBacks.stream().filter(told -> told.windId() == null).count()
                + breaks.stream()
                        .map(BreakTold::motorId)
                        .filter(motor -> !motor.equals(now.motorId()) && !isRead(motor))
                        .count();
        return (int) (read + unread);
    }

    /** The wind of the motor that it has now, as far as a reader taps one; never one that is over. */
    public Optional<Wind> presentWind() {
        return winds.stream().filter(wind -> !isOver(wind)).reduce((earlier, later) -> later);
    }

    /** Winds that were not run back, in order. */
    public List<Wind> windsNotRunBack() {
        return winds.stream().filter(wind -> !isRunBack(wind)).toList();
    }

    private boolean isOver(Wind wind) {
        return !wind.begun().motorId().equals(now.motorId()) || isRunBack(wind);
    }

    private boolean isRunBack(Wind wind) {
        return runBacks.stream().anyMatch(told -> wind.begun().id().equals(told.windId()));
    }

    private boolean isRead(String motor) {
        return winds.stream().anyMatch(wind -> wind.begun().motorId().equals(motor));
    }
}

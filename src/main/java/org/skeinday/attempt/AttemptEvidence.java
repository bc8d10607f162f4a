package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.winding.Wind;

/**
 * What the record knows of one attempt: all that its phase is made of. Read once for a page, in one snapshot.
 *
 * @param steps when it took its steps
 * @param winds of the attempt, in the order in which they were begun
 * @param motorBrokeAtMs when its present motor broke, null while it did not
 * @param afterBreak what was told after that break
 * @param turnsOn whether its motor was wound when it was given up and nobody has said that it was run back
 * @param timed its watches, {@code watchesWanted} how many the rules ask for
 * @param signaturesMissing that are still owed for its time; 0 where none are asked for
 */
public record AttemptEvidence(
        AttemptNow now,
        Steps steps,
        List<Wind> winds,
        @Nullable Long motorBrokeAtMs,
        AfterBreak afterBreak,
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
    public record AfterBreak(boolean peopleSafe, @Nullable BreakPlace where) {
        public static final AfterBreak NOTHING = new AfterBreak(false, null);
    }

    public AttemptEvidence {
        winds = List.copyOf(winds);
    }

    /** The winds of the motor that it has now; those before belong to motors that broke or were changed. */
    List<Wind> ofPresentMotor() {
        return winds.stream()
                .filter(w -> w.begun().motorId().equals(now.motorId()))
                .toList();
    }
}

package org.skeinday.attempt.web;

import java.util.Optional;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.contest.EntryAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;

/**
 * A motor that the plan in force has for an attempt and that may not be wound yet.
 *
 * @param words what keeps it, without an end; begins with its tag
 */
public record ComingMotor(MotorAdded motor, String words) {
    /** Empty where the plan names none, or one that may be wound at once or never. */
    public static Optional<ComingMotor> of(Tx tx, MotorsAtHand atHand, EntryAdded entry, AttemptNumber number) {
        return atHand.plannedLater(entry, number)
                .map(life -> new ComingMotor(life.motor(), WhyNoMotor.of(tx, atHand, entry, life)));
    }

    /** The same for the attempt that an entry calls next; none where it cannot be found out. */
    static Optional<ComingMotor> next(Tx tx, EntryAdded entry) {
        return Apart.made(
                "What the plan has",
                () -> of(tx, new MotorsAtHand(tx), entry, AttemptNumbers.next(tx, entry)),
                words -> Optional.empty());
    }
}

package org.skeinday.attempt.action;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;

/**
 * A motor that the plan in force has for another entry of the team, whose attempt nobody has called yet: a person may take it
 * all the same, and is asked before. The other entry is dealt another one then.
 */
final class PlannedForAnother {
    private PlannedForAnother() {}

    /** The question; empty where nothing is to be asked, or the page said it. @param meant ids that the page named so */
    static Optional<String> asked(Tx tx, EntryAdded entry, @Nullable String motor, @Nullable String meant) {
        boolean said = motor != null
                && meant != null
                && Arrays.asList(meant.split(" ", -1)).contains(motor);
        return said || motor == null || !entry.own()
                ? Optional.empty()
                : MotorStore.find(tx, motor)
                        .flatMap(
                                one -> whose(tx, entry, one)
                                        .map(
                                                whose -> one.tag() + " is planned for " + whose
                                                        + ". Choose it again to take it all the same: then another one is found for that."));
    }

    private static Optional<String> whose(Tx tx, EntryAdded notThis, MotorAdded motor) {
        return EntryStore.ofEvent(tx, notThis.eventId()).stream()
                .filter(other -> other.own() && !other.id().equals(notThis.id()))
                .filter(other -> other.team().equals(motor.team()))
                .flatMap(other -> nextIfPlanned(tx, other, motor).stream())
                .findFirst();
    }

    /** The attempt that an entry calls next, where the plan has this motor for it. */
    private static Optional<String> nextIfPlanned(Tx tx, EntryAdded entry, MotorAdded motor) {
        AttemptNumber next = AttemptNumbers.next(tx, entry);
        return Assignments.plannedMotor(tx, entry, next)
                .filter(motor.tag()::equals)
                .map(tag -> entry.name() + ", " + next.words());
    }
}

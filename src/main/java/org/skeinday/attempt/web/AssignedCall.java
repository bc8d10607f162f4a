package org.skeinday.attempt.web;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.CallAttempt;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;

/** A call from the list of entries, which shows no choice: with the model and motor that the card would offer first. */
final class AssignedCall {
    private AssignedCall() {}

    /** Other teams' attempts have neither. @param number of the attempt that the form offered */
    static CallAttempt.Call of(Tx tx, String entryId, @Nullable Integer number) {
        Optional<EntryAdded> own = EntryStore.find(tx, entryId).filter(EntryAdded::own);
        List<ModelAdded> models =
                own.map(entry -> ModelStore.ofEntry(tx, entry.id())).orElse(List.of());
        String motor = own.filter(entry -> ComingMotor.next(tx, entry).isEmpty())
                .flatMap(entry -> MotorsAtHand.assigned(MotorsAtHand.offersOrNone(tx, entry, models)))
                .map(MotorAdded::id)
                .orElse(null);
        return new CallAttempt.Call(
                entryId, models.isEmpty() ? null : models.get(0).id(), motor, number, motor);
    }
}

package org.skeinday.review.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.BatchOfWinds;
import org.skeinday.review.Named;
import org.skeinday.winding.BatchWinds;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** Reads the counted winds of batches with everything that was read of them. */
public final class BatchWindsStore {
    private final Tx tx;
    private final MotorNames motors;
    private final MotorUses uses;
    private final WindWorth worth;

    public BatchWindsStore(Tx tx) {
        this.tx = tx;
        this.motors = MotorNames.read(tx);
        this.uses = MotorUseStore.all(tx);
        this.worth = new WindWorth(tx);
    }

    /** Four queries, however many winds; empty when there is no such batch. */
    public Optional<BatchOfWinds> of(String batch) {
        var added = motors.batches().get(batch);
        if (added == null) {
            return Optional.empty();
        }
        Map<String, BatchOfWinds.Of> sizes = new HashMap<>();
        motors.motors().values().stream().filter(m -> m.batchId().equals(batch)).forEach(m -> sizes.put(m.id(), of(m)));
        return Optional.of(new BatchOfWinds(
                new Named(batch, added.name()), WindStore.evidenceOfBatch(tx, batch, worth), sizes, uses));
    }

    private BatchOfWinds.Of of(MotorAdded motor) {
        return new BatchOfWinds.Of(
                new Named(motor.id(), motor.tag()), BatchWinds.Size.of(motor), motors.breakingTurns(motor.id()));
    }
}

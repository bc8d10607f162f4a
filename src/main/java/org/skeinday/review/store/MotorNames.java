package org.skeinday.review.store;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.Named;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/** All motors and their batches, by the motor's id; null for one that is not there. */
record MotorNames(Map<String, MotorAdded> motors, Map<String, BatchAdded> batches) {
    static MotorNames read(Tx tx) {
        Map<String, MotorAdded> motors = new HashMap<>();
        Map<String, BatchAdded> batches = new HashMap<>();
        MotorStore.all(tx).forEach(m -> motors.put(m.id(), m));
        BatchStore.all(tx).forEach(b -> batches.put(b.id(), b));
        return new MotorNames(motors, batches);
    }

    @Nullable
    MotorAdded added(String motor) {
        return motors.get(motor);
    }

    @Nullable
    Named motor(String id) {
        MotorAdded motor = motors.get(id);
        return motor == null ? null : new Named(id, motor.tag());
    }

    @Nullable
    Named batch(String motor) {
        BatchAdded batch = batchOf(motor);
        return batch == null ? null : new Named(batch.id(), batch.name());
    }

    private @Nullable BatchAdded batchOf(String id) {
        MotorAdded motor = motors.get(id);
        return motor == null ? null : batches.get(motor.batchId());
    }

    /** Its own, else by its batch's K. */
    @Nullable
    Double breakingTurns(String id) {
        MotorAdded motor = motors.get(id);
        BatchAdded batch = batchOf(id);
        Integer own = motor == null ? null : motor.breakingTurns();
        if (own != null) {
            return own > 0 ? (Double) own.doubleValue() : null;
        }
        Double k = batch == null ? null : batch.kInchGram();
        return motor == null || k == null
                ? null
                : (Double) BreakingTurns.of(k, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()));
    }
}

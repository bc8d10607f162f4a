package org.skeinday.attempt.action;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.hall.AirMeasured;
import org.skeinday.hall.store.HallStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;

/** How warm it was where motors of today's batches were broken. */
public final class TestedAt {
    private TestedAt() {}

    /** Mean over the breaks near which the air was measured, °C; empty when it never was. */
    public static OptionalDouble celsius(Tx tx) {
        Set<String> batches = TodaysStretch.atHand(tx).map(MotorAdded::batchId).collect(Collectors.toSet());
        List<Long> breaks = MotorLifeStore.brokeAt(tx, batches);
        return breaks.isEmpty()
                ? OptionalDouble.empty()
                : AirMeasured.meanCelsius(HallStore.air(tx, 0, Long.MAX_VALUE), breaks);
    }
}

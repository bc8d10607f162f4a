package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.function.BooleanSupplier;

/** Waits for a condition, looking again each few milliseconds, and fails when it does not come. */
public final class Await {
    private Await() {}

    public static void until(Duration most, BooleanSupplier holds) throws InterruptedException {
        for (long left = most.toMillis(); left > 0 && !holds.getAsBoolean(); left -= 2) {
            Thread.sleep(2);
        }
        assertTrue(holds.getAsBoolean(), "within " + most);
    }
}

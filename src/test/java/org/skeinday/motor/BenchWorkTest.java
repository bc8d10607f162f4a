package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;

class BenchWorkTest {
    private static final Map<Wait.Name, Wait> WAITS = Map.of(
            Wait.Name.SOAK, new Wait("soak", 60, 300, null, false),
            Wait.Name.HOLD, new Wait("hold", 0, 180, null, false),
            Wait.Name.REST, new Wait("rest", 120, 600, null, false));
    private static final MotorAdded FRESH =
            new MotorAdded("m", "A3", "a", "Reedbank", "cw", 476, "476 mm", 1.6, "1.6 g", null, 0);

    @Test
    void a_weighed_motor_has_three_deeds_and_three_waits_ahead() {
        BenchWork work = BenchWork.of(new MotorLife(FRESH, null, false, 0), WAITS, 0);
        assertEquals(new BenchWork(3 * 60 + 60 + 120, 3 * 60 + 300 + 180 + 600), work);
    }

    @Test
    void of_a_wait_that_runs_the_rest_of_it_counts() {
        MotorLife weighed = new MotorLife(FRESH, null, false, 0);
        MotorStep soaking = weighed.step(
                MotorDeed.LUBRICATE,
                new MotorStep.By("s", 1_000_000, "", ""),
                WAITS.get(Wait.Name.SOAK),
                MotorStep.Told.NOTHING);
        BenchWork work = BenchWork.of(new MotorLife(FRESH, soaking, false, 0), WAITS, 1_000_000 + 100_000);
        assertEquals(new BenchWork(2 * 60 + 120, 200 + 2 * 60 + 180 + 600), work);
    }

    @Test
    void it_fits_to_the_second_as_wished_else_with_the_least_waits_else_not() {
        BenchWork work = new BenchWork(300, 900);
        assertEquals(BenchWork.Verdict.FITS, work.within(900));
        assertEquals(BenchWork.Verdict.ONLY_SHORTENED, work.within(899));
        assertEquals(BenchWork.Verdict.ONLY_SHORTENED, work.within(300));
        assertEquals(BenchWork.Verdict.TOO_LATE, work.within(299));
        assertEquals(BenchWork.Verdict.DONE, new BenchWork(0, 0).within(0));
    }
}

package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStep;

class BenchOrderTest {
    private static MotorLife motor(String tag, String stage) {
        var added = new MotorAdded(tag, tag, "b", "Reedbank Rotors", "cw", 450, "450 mm", 1.5, "1.5 g", null, 1);
        var step = new MotorStep(
                "s" + tag, tag, "rest", stage, 1, null, "laptop", null, null, null, null, false, null, null, null, null,
                null, null, null, null, null);
        return new MotorLife(added, step, false, 0);
    }

    private static String order(List<String> byHand, List<String> needed) {
        List<MotorLife> motors =
                Stream.of("D", "B", "A", "C").map(t -> motor(t, "ready")).collect(Collectors.toList());
        motors.add(motor("X", "broken"));
        return BenchOrder.of(motors, byHand, needed).stream()
                .map(m -> m.motor().tag())
                .collect(Collectors.joining());
    }

    @Test
    void those_that_attempts_need_come_first_and_the_rest_by_tag() {
        assertEquals("CBADX", order(List.of(), List.of("C", "B")));
    }

    @Test
    void by_hand_goes_before_need() {
        assertEquals("DCBAX", order(List.of("D"), List.of("C", "B")));
    }

    @Test
    void what_is_out_stands_last_whoever_needs_it() {
        assertEquals("CABDX", order(List.of(), List.of("X", "C")));
    }
}

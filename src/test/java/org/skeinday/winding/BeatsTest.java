package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.MathContext;
import org.junit.jupiter.api.Test;

class BeatsTest {
    @Test
    void ninety_turns_a_minute_beat_every_two_thirds_of_a_second() {
        Beats beats = Beats.perMinute(90);
        assertEquals(0, beats.seconds(0));
        assertEquals(2.0 / 3, beats.seconds(1));
        assertEquals(60, beats.seconds(90));
        assertEquals(30, new Beats(90, 2).seconds(90));
    }

    /** Adding intervals up would not pass this. */
    @Test
    void the_millionth_beat_is_as_exact_as_the_first() {
        for (int perMinute = 20; perMinute <= 200; perMinute++) {
            double exact = BigDecimal.valueOf(60_000_000L)
                    .divide(BigDecimal.valueOf(perMinute), MathContext.DECIMAL128)
                    .doubleValue();
            assertEquals(exact, Beats.perMinute(perMinute).seconds(1_000_000), perMinute + " a minute");
        }
        double added = 0;
        for (int k = 0; k < 1_000_000; k++) {
            added += Beats.perMinute(70).seconds(1);
        }
        assertNotEquals(added, Beats.perMinute(70).seconds(1_000_000));
    }

    @Test
    void a_pace_is_20_to_200_crank_turns_a_minute() {
        assertEquals(3, Beats.perMinute(20).seconds(1));
        assertEquals(0.3, Beats.perMinute(200).seconds(1));
        assertThrows(IllegalArgumentException.class, () -> Beats.perMinute(19));
        assertThrows(IllegalArgumentException.class, () -> Beats.perMinute(201));
        assertThrows(IllegalArgumentException.class, () -> new Beats(60, 0));
        assertThrows(IllegalArgumentException.class, () -> Beats.perMinute(60).seconds(-1));
    }
}

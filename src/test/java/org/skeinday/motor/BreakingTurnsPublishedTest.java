package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

class BreakingTurnsPublishedTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/published/motor/turns.csv", numLinesToSkip = 1)
    void turns_agree_with_published_ones(
            double k, double loopIn, double massG, double fraction, double turns, double tolerance, String source) {
        double broke = BreakingTurns.of(k, Length.ofInches(loopIn), Mass.ofGrams(massG));
        assertEquals(turns, fraction * broke, tolerance, source);
    }

    /** The same motor typed in mm and ounces breaks at the same turns. */
    @Test
    void the_units_typed_do_not_matter() {
        double inches = BreakingTurns.of(44, Length.ofInches(20), Mass.ofGrams(28.349523125));
        assertEquals(inches, BreakingTurns.of(44, Length.ofMillimetres(508), Mass.ofOunces(1)), 1e-9);
    }

    @Test
    void k_to_turns_and_back_is_the_same_k() {
        long seed = 20260411;
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            double k = 30 + 30 * random.nextDouble();
            Length loop = Length.ofInches(1 + 60 * random.nextDouble());
            Mass mass = Mass.ofGrams(0.05 + 20 * random.nextDouble());
            double turns = BreakingTurns.of(k, loop, mass);
            assertEquals(k, BreakingTurns.k(turns, loop, mass), 1e-9, "seed " + seed);
        }
    }

    @Test
    void nothing_but_above_zero_is_taken() {
        Length loop = Length.ofInches(17);
        Mass mass = Mass.ofGrams(2);
        assertThrows(IllegalArgumentException.class, () -> BreakingTurns.of(0, loop, mass));
        assertThrows(IllegalArgumentException.class, () -> BreakingTurns.k(Double.NaN, loop, mass));
        assertThrows(IllegalArgumentException.class, () -> BreakingTurns.of(44, Length.ofInches(0), mass));
        assertThrows(IllegalArgumentException.class, () -> BreakingTurns.of(44, loop, Mass.ofGrams(0)));
    }
}

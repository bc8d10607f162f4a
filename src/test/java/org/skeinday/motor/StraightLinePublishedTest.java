package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import org.junit.jupiter.api.Test;

class StraightLinePublishedTest {
    private static StraightLine of(String file) throws IOException {
        return StraightLine.through(RubberTables.column(file, 0), RubberTables.column(file, 1));
    }

    @Test
    void norris_gives_the_certified_line() throws IOException {
        StraightLine line = of("norris.csv"); // NIST StRD, certified values
        assertEquals(36, line.n());
        assertEquals(1.00211681802045, line.slope(), 1e-12);
        assertEquals(0.429796848199937e-3, line.slopeError(), 1e-13);
        assertEquals(-0.262323073774029, line.intercept(), 1e-10);
        assertEquals(0.232818234301152, line.interceptError(), 1e-10);
        assertEquals(0.999993745883712, line.rSquared(), 1e-13);
    }

    @Test
    void moore_and_mccabe_give_the_half_width_of_the_slope() throws IOException {
        StraightLine line = of("moore-mccabe-10-3.csv"); // exercise 10.3
        Interval slope = line.slopeInterval(0.95);
        assertEquals(0.011448491, line.slopeError(), 1e-9);
        assertEquals(0.0270713794287, (slope.high() - slope.low()) / 2, 1e-9);
    }
}

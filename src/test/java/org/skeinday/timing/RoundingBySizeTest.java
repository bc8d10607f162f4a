package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.skeinday.units.FlightTime;

class RoundingBySizeTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/published/timing/rounding-by-size.csv", numLinesToSkip = 1)
    void short_and_long_times_have_their_own_step(String kind, String time, String rounded, String source) {
        RoundingBySize rule = kind.equals("single") ? RoundingBySize.SINGLES : RoundingBySize.AVERAGES;
        assertEquals(
                FlightTime.parse(rounded).millis(),
                rule.round(FlightTime.parse(time).millis()),
                source);
    }

    @Test
    void steps_beyond_their_range_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> new RoundingBySize(Rounding.UP, 0, 1, Rounding.UP, 1));
        assertThrows(IllegalArgumentException.class, () -> new RoundingBySize(Rounding.UP, 1, 1, Rounding.UP, 60_001));
        assertThrows(IllegalArgumentException.class, () -> new RoundingBySize(Rounding.UP, 1, -1, Rounding.UP, 1));
    }
}

package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class LoggedFlightsTest {
    private static final long MINUTE = 60_000;

    private static int without(List<Integer> winds, List<Integer> flights) {
        return LoggedFlights.withoutWind(
                winds.stream().map(m -> m * MINUTE).toList(),
                flights.stream().map(m -> m * MINUTE).toList());
    }

    @Test
    void each_flight_is_that_of_one_wind_or_a_wind_of_its_own() {
        assertEquals(2, without(List.of(), List.of(10, 20)), "nothing but the log");
        assertEquals(0, without(List.of(10, 40, 70), List.of(180, 181, 182)), "logged at the end of the evening");
        assertEquals(1, without(List.of(10), List.of(15, 35)), "the second was wound without the program");
        assertEquals(0, without(List.of(10, 20, 30), List.of(25)), "two were run back");
        assertEquals(1, without(List.of(30), List.of(25)), "a later wind is none of it");
        assertEquals(1, without(List.of(0), List.of(13 * 60)), "nor one of the morning");
    }
}

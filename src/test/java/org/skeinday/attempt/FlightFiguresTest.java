package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.evidence.Counts;
import org.skeinday.units.FlightTime;

class FlightFiguresTest {
    private static final FlightFigures WORKED = new FlightFigures(210, 3, 44, 10, FlightTime.parse("1:48"));

    private static FlightForecast.Flown flown(String time, int use) {
        return new FlightForecast.Flown(FlightTime.parse(time), use);
    }

    @Test
    void the_worked_case_uses_1630_turns_at_15_09_a_second() {
        assertEquals(440, WORKED.motorTurnsRemaining());
        assertEquals(1630, WORKED.motorTurnsUsed());
        assertEquals(15.09, WORKED.turnsPerSecond(), 0.005);
        assertEquals(905.6, WORKED.turnsPerMinute(), 0.05);
    }

    @Test
    void more_left_than_wound_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new FlightFigures(40, 3, 38, 10, new FlightTime(1)));
    }

    @Test
    void the_remainder_is_read_by_its_share_unless_the_flight_was_spoilt() {
        double many = RemainderReading.MANY_FROM;
        FlightFigures ranOut = new FlightFigures(210, 3, 0, 10, new FlightTime(100_000));
        FlightFigures few = new FlightFigures(210, 3, 5, 10, new FlightTime(100_000));
        Counts beam = Counts.leftOut("touched a beam");
        assertEquals(RemainderReading.MANY, RemainderReading.of(WORKED, Counts.yes(), many));
        assertEquals(RemainderReading.SOME, RemainderReading.of(few, Counts.yes(), many));
        assertEquals(RemainderReading.NONE, RemainderReading.of(ranOut, Counts.yes(), many));
        assertEquals(RemainderReading.SAYS_NOTHING, RemainderReading.of(WORKED, beam, many));
    }

    @Test
    void a_forecast_needs_three_flights_that_count() {
        FlightForecast.Flown first = flown("1:40", 1);
        FlightForecast.Flown second = flown("1:50", 2);
        FlightForecast.Flown third = flown("2:00", 3);
        assertInstanceOf(FlightForecast.NotKnown.class, FlightForecast.of(List.of(first, second), 2, 0.9));
        FlightForecast.Expected said =
                (FlightForecast.Expected) FlightForecast.of(List.of(first, second, third), 2, 0.9);
        assertEquals(110, said.seconds(), 1e-9);
        assertEquals(3, said.flights());
        // t(0.95; 2) = 2.919986 (standard tables), deviation 10, so 110 ± 2.919986 · 10 · √(4/3)
        assertEquals(110 + 33.7171, said.interval().high(), 1e-3);
    }

    @Test
    void enough_flights_on_the_same_use_count_alone() {
        List<FlightForecast.Flown> flights =
                List.of(flown("1:00", 1), flown("2:00", 2), flown("2:10", 2), flown("2:20", 2));
        assertEquals(130, ((FlightForecast.Expected) FlightForecast.of(flights, 2, 0.9)).seconds(), 1e-9);
    }
}

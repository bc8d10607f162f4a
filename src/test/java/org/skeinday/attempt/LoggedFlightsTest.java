package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.skeinday.winding.WindBegun;

class LoggedFlightsTest {
    private static final int MINUTE = 60_000;

    private static WindBegun wind(int minute) {
        return new WindBegun(
                "w" + minute,
                null,
                "A3",
                null,
                null,
                10,
                null,
                null,
                null,
                null,
                0,
                null,
                "count",
                1,
                "laptop",
                null,
                (long) minute * MINUTE,
                false);
    }

    private static PracticeFlown flight(int minute) {
        long atMs = (long) minute * MINUTE;
        return new PracticeFlown(
                "f" + minute,
                "e",
                null,
                "A3",
                atMs,
                null,
                10,
                null,
                null,
                null,
                null,
                null,
                90_000,
                null,
                null,
                true,
                null);
    }

    private static Map<String, String> taken(List<Integer> winds, List<Integer> flights) {
        Map<String, String> taken = new TreeMap<>();
        LoggedFlights.winds(
                        winds.stream().map(LoggedFlightsTest::wind).toList(),
                        flights.stream().map(LoggedFlightsTest::flight).toList())
                .forEach((flight, wind) -> taken.put(flight, wind.id()));
        return taken;
    }

    @Test
    void each_flight_is_that_of_one_wind_or_a_wind_of_its_own() {
        assertEquals(Map.of(), taken(List.of(), List.of(10, 20)), "nothing but the log");
        assertEquals(
                Map.of("f180", "w10", "f181", "w40", "f182", "w70"),
                taken(List.of(10, 40, 70), List.of(180, 181, 182)),
                "logged at the end of the evening");
        assertEquals(
                Map.of("f15", "w10"), taken(List.of(10), List.of(15, 35)), "the second was wound without the program");
        assertEquals(Map.of("f25", "w10"), taken(List.of(10, 20, 30), List.of(25)), "two were run back");
        assertEquals(Map.of(), taken(List.of(30), List.of(25)), "a later wind is none of it");
        assertEquals(Map.of(), taken(List.of(0), List.of(13 * 60)), "nor one of the morning");
    }
}

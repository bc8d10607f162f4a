package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.units.FlightTime;

class HeldFlightTest {
    private static long ms(String time) {
        return FlightTime.parse(time).millis();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/timing/held.csv", numLinesToSkip = 1)
    void a_model_held_for_the_whole_watching_has_it_deducted(
            String from,
            @Nullable String freed,
            String stopped,
            HeldFlight.Ending ending,
            String flight,
            String source) {
        var contact = new Contact("beam", ms(from), freed == null ? null : (Long) ms(freed));
        HeldFlight held = HeldFlight.of(List.of(contact), ms(stopped), HoldRule.TEN_SECONDS);
        assertEquals(ending, held.ending(), source);
        assertEquals(ms(flight), held.flightMs(), source);
        assertEquals(held.endedMs() - held.deductedMs(), held.flightMs());
    }

    @Test
    void the_first_contact_that_held_ends_the_flight_and_every_one_is_in_the_words() {
        var contacts = List.of(
                new Contact("lamp", 20_000, 24_500L),
                new Contact("", 40_000, 51_000L),
                new Contact("beam", 60_000, 61_000L));
        HeldFlight held = HeldFlight.of(contacts, 90_000, HoldRule.TEN_SECONDS);
        assertEquals(50_000, held.endedMs());
        assertEquals(
                "Caught by the lamp at 0:20.00, freed after 4.50 s: the clock went on; caught at 0:40.00, still held after"
                        + " 10.00 s: the flight was over at 0:50.00, less 10.00 s: 0:40.00",
                held.how());
    }

    @Test
    void a_flight_without_a_contact_ends_at_the_stop() {
        HeldFlight free = HeldFlight.of(List.of(), 90_000, HoldRule.TEN_SECONDS);
        assertEquals(90_000, free.flightMs());
        assertEquals("Stopped at 1:30.00: 1:30.00", free.how());
    }

    @ParameterizedTest
    @CsvSource({
        "5000, 5000, 14999, STOPPED, 60000",
        "5000, 5000, 15000, HELD, 10000",
        "5000, 2000, 15000, HELD, 13000",
        "20000, 20000, 29999, STOPPED, 60000",
        "20000, 20000, 30000, HELD, 10000"
    })
    void the_watching_and_the_deduction_are_settings(
            long watched, long deduct, long freed, HeldFlight.Ending ending, long flight) {
        HeldFlight held =
                HeldFlight.of(List.of(new Contact("beam", 10_000, freed)), 60_000, new HoldRule(watched, deduct));
        assertEquals(ending, held.ending());
        assertEquals(flight, held.flightMs());
    }

    @Test
    void a_hand_watch_that_ran_through_the_watching_is_reduced_by_the_deduction() {
        assertEquals(83_200, HoldRule.TEN_SECONDS.deduct(new FlightTime(93_200)).millis());
        assertEquals(0, HoldRule.TEN_SECONDS.deduct(new FlightTime(10_000)).millis());
        assertThrows(IllegalArgumentException.class, () -> HoldRule.TEN_SECONDS.deduct(new FlightTime(9_999)));
    }

    @Test
    void contacts_out_of_order_and_settings_out_of_range_are_refused() {
        var open = new Contact("beam", 10_000, null);
        var later = new Contact("beam", 20_000, null);
        assertThrows(IllegalArgumentException.class, () -> held(List.of(open, later)));
        assertThrows(IllegalArgumentException.class, () -> held(List.of(new Contact("beam", 90_001, null))));
        assertThrows(IllegalArgumentException.class, () -> new Contact("beam", 10, 9L));
        assertThrows(IllegalArgumentException.class, () -> new Contact("beam", -1, null));
        assertThrows(IllegalArgumentException.class, () -> new HoldRule(10_000, 10_001));
        assertThrows(IllegalArgumentException.class, () -> new HoldRule(-1, 0));
    }

    private static HeldFlight held(List<Contact> contacts) {
        return HeldFlight.of(contacts, 90_000, HoldRule.TEN_SECONDS);
    }
}

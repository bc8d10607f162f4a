package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlightWindowTest {
    private static final FlightWindow WINDOW = new FlightWindow(10_000, 310_000, 120_000);

    @ParameterizedTest
    @CsvSource({
        "9999, 0, OUTSIDE, -1",
        "10000, 0, INSIDE, 0",
        "310000, 0, INSIDE, 0",
        "310001, 0, OUTSIDE, -1",
        "309979, 20, INSIDE, 21",
        "309980, 20, INSIDE, 20",
        "309981, 20, BY_A_PERSON, 19",
        "310020, 20, BY_A_PERSON, -20",
        "310021, 20, OUTSIDE, -21",
        "10019, 20, BY_A_PERSON, 19",
        "10020, 20, INSIDE, 20",
        "9980, 20, BY_A_PERSON, -20",
        "9979, 20, OUTSIDE, -21",
    })
    void a_release_nearer_to_an_end_than_the_clocks_agree_is_for_a_person(
            long released, long bound, ReleaseVerdict.Side side, long within) {
        ReleaseVerdict verdict = WINDOW.place(released, bound);
        assertEquals(side, verdict.side());
        assertEquals(within, verdict.withinMs());
    }

    @Test
    void the_words_say_by_how_much_and_what_the_clocks_allow() {
        assertEquals(
                "Released 0.02 s after it closed, but the two clocks may differ by 0.035 s: a person decides",
                WINDOW.place(310_020, 35).words());
        assertEquals(
                "Released 10.00 s after it opened: inside the window",
                WINDOW.place(20_000, 35).words());
        assertEquals(
                "Released 1.50 s before it opened: outside the window",
                WINDOW.place(8_500, 35).words());
        assertEquals(
                "Released 59.999 s after it opened: inside the window",
                WINDOW.place(69_999, 35).words());
        assertEquals(
                "Released 2:05 after it opened: inside the window",
                WINDOW.place(135_873, 35).words());
    }

    /** Whatever the true moment within the bound, a verdict that is not for a person agrees with it. */
    @Test
    void a_verdict_never_contradicts_a_true_moment_within_the_bound() {
        Random random = new Random(8);
        for (int i = 0; i < 20_000; i++) {
            long truth = random.nextInt(320_000);
            long bound = random.nextInt(2_000);
            long seen = truth + random.nextLong(-bound, bound + 1);
            ReleaseVerdict.Side exact = WINDOW.place(truth, 0).side();
            ReleaseVerdict.Side side = WINDOW.place(seen, bound).side();
            if (side != ReleaseVerdict.Side.BY_A_PERSON) {
                assertEquals(exact, side, truth + " seen as " + seen + " within " + bound);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"9999, AHEAD", "10000, OPEN", "189999, OPEN", "190000, LAST_CALL", "310000, LAST_CALL", "310001, CLOSED"
    })
    void the_last_call_is_made_so_long_before_the_end(long now, FlightWindow.Phase phase) {
        assertEquals(phase, WINDOW.at(now));
        assertEquals(190_000, WINDOW.lastCallAtMs());
    }

    @Test
    void a_window_without_a_last_call_stays_open_to_the_end() {
        assertEquals(FlightWindow.Phase.OPEN, new FlightWindow(0, 100, 0).at(100));
    }

    @Test
    void what_cannot_be_a_window_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new FlightWindow(10, 9, 0));
        assertThrows(IllegalArgumentException.class, () -> new FlightWindow(0, 10, 11));
        assertThrows(IllegalArgumentException.class, () -> WINDOW.place(0, -1));
    }

    /** What came in at the last moment may have been released earlier: inside or outside, a person says. */
    @Test
    void a_release_known_only_by_when_it_came_in_is_for_a_person_unless_it_came_in_too_early() {
        var window = new FlightWindow(100_000, 200_000, 0);
        assertEquals(ReleaseVerdict.Side.OUTSIDE, window.placeUnknown(99_999).side());
        assertEquals(
                ReleaseVerdict.Side.BY_A_PERSON, window.placeUnknown(100_000).side());
        assertEquals(
                ReleaseVerdict.Side.BY_A_PERSON, window.placeUnknown(200_000).side());
        assertEquals(
                ReleaseVerdict.Side.BY_A_PERSON, window.placeUnknown(900_000).side());
        assertEquals(
                "The device did not know the window's clock; its release came in 0.50 s after it closed: a person decides",
                window.placeUnknown(200_500).words());
        assertEquals(
                "Landed 0.50 s before it closed: inside the window",
                window.placeLanding(199_500, 0).words());
    }
}

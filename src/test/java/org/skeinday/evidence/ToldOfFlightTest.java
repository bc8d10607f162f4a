package org.skeinday.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Each doubt at its threshold and just before it. */
class ToldOfFlightTest {
    private static final MeterScale SCALE = new MeterScale(7.0, "1 in-ozf");
    private static final Usual USUAL = Usual.of(List.of(110.0, 120.0, 130.0), List.of(14.0, 15.0, 16.0));

    private static ToldOfFlight turns(double wound, double off, double left) {
        return new ToldOfFlight(wound, off, left, 10, null, null, null, null, null, Usual.UNKNOWN);
    }

    private static ToldOfFlight torques(Double peak, Double launch) {
        return new ToldOfFlight(null, null, null, 10, peak, launch, SCALE, null, null, Usual.UNKNOWN);
    }

    private static ToldOfFlight lasted(long ms, Double wound) {
        return new ToldOfFlight(wound, 5.0, 50.0, 10, null, null, null, ms, null, USUAL);
    }

    private static List<Unlikely> doubts(ToldOfFlight told) {
        return told.doubts().stream().map(Doubted::why).toList();
    }

    @Test
    void no_more_can_be_left_or_taken_off_than_was_wound() {
        assertEquals(List.of(), doubts(turns(200, 5, 195)));
        assertEquals(List.of(Unlikely.MORE_LEFT_THAN_WOUND), doubts(turns(200, 5, 195.5)));
        assertEquals(
                "More turns are left than it was launched with: 330 of 195 crank turns. Correct one of the two",
                turns(200, 5, 330).doubts().get(0).words());
        assertEquals(List.of(), doubts(turns(200, 200, 0)));
        assertEquals(List.of(Unlikely.MORE_OFF_THAN_WOUND), doubts(turns(200, 201, 0)));
    }

    @Test
    void no_motor_holds_twice_the_turns_that_break_it() {
        var told = new ToldOfFlight(540.0, null, null, 10, null, null, null, null, 2700.0, Usual.UNKNOWN);
        assertEquals(List.of(), doubts(told));
        var more = new ToldOfFlight(541.0, null, null, 10, null, null, null, null, 2700.0, Usual.UNKNOWN);
        assertEquals(List.of(Unlikely.TURNS_BEYOND_BREAKING), doubts(more));
    }

    @Test
    void a_launch_torque_is_not_above_the_highest_and_neither_is_off_the_scale() {
        assertEquals(List.of(), doubts(torques(7.0, 7.0)));
        assertEquals(List.of(Unlikely.LAUNCH_ABOVE_PEAK), doubts(torques(6.0, 6.1)));
        assertEquals(List.of(Unlikely.PEAK_OFF_THE_METER), doubts(torques(7.1, null)));
        assertEquals(List.of(Unlikely.LAUNCH_OFF_THE_METER), doubts(torques(null, 69.9)));
        assertTrue(torques(7.1, null).doubts().get(0).words().contains("ends at 1 in-ozf"));
    }

    @Test
    void ten_times_the_usual_time_or_speed_is_asked_about_and_less_than_three_flights_are_not_usual() {
        assertEquals(List.of(), doubts(lasted(1_199_000, null)));
        assertEquals(List.of(Unlikely.UNUSUAL_TIME), doubts(lasted(1_200_000, null)));
        assertEquals(List.of(Unlikely.UNUSUAL_TIME), doubts(lasted(12_000, null)));
        assertEquals(
                "Ten times more than usual: this model flies about 2:00",
                lasted(1_200_000, null).doubts().get(0).words());
        assertEquals(List.of(), doubts(lasted(120_000, 1_854.0))); // 149.9 turns/s
        assertEquals(List.of(Unlikely.UNUSUAL_SPEED), doubts(lasted(120_000, 1_856.0)));
        assertEquals(Usual.UNKNOWN, Usual.of(List.of(1.0, 2.0), List.of()));
        assertEquals(15.0, Usual.of(List.of(), List.of(10.0, 20.0, 12.0, 18.0)).turnsPerSecond());
    }

    @Test
    void what_is_not_known_is_not_doubted() {
        var nothing = new ToldOfFlight(null, null, null, 10, null, null, SCALE, null, 2700.0, USUAL);
        assertEquals(List.of(), nothing.doubts());
        assertEquals(
                List.of(), doubts(new ToldOfFlight(null, 3.0, 50.0, 10, null, 1.0, null, 0L, null, Usual.UNKNOWN)));
    }
}

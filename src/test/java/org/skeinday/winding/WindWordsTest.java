package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.Hold;
import org.skeinday.motor.HoldBleed;
import org.skeinday.units.Torque;

class WindWordsTest {
    private static Torque nmm(double torque) {
        return Torque.ofNewtonMillimetres(torque);
    }

    private static String launch(double wanted, double reached) {
        return new LaunchAgainstWanted(nmm(wanted), nmm(reached)).words();
    }

    @Test
    void two_per_cent_off_is_as_wanted_and_more_is_not() {
        assertEquals("launch torque as wanted", launch(5, 5.1));
        assertEquals("launch torque as wanted", launch(5, 4.9));
        assertEquals("launch torque 3 % too high", launch(100, 102.6));
        assertEquals("launch torque 2 % too high", launch(100, 102.1));
        assertEquals("launch torque 20 % too low", launch(5, 4));
    }

    @Test
    void a_launch_torque_of_nothing_cannot_be_wanted() {
        assertThrows(IllegalArgumentException.class, () -> new LaunchAgainstWanted(nmm(0), nmm(5)));
    }

    private static HoldBleed bleed(int holds, double k) {
        return new HoldBleed(Collections.nCopies(holds, new Hold(k, nmm(6))));
    }

    private static String hold(HoldBleed bleed, double wanted, Hold.Reading... readings) {
        return HoldWords.of(bleed, Optional.of(nmm(wanted)), List.of(readings), 60);
    }

    private static Hold.Reading at(double seconds, double torque) {
        return new Hold.Reading(seconds, nmm(torque));
    }

    @Test
    void before_three_measured_holds_the_bleed_is_not_known() {
        assertEquals("bleed not known, hold at most 60 s", hold(bleed(2, 0.1), 4, at(10, 5)));
        // 5.4 at 10 s of 6 · (1 − 0.1 · log10 t); 4.8 at 10² s
        assertEquals(
                "torque is down to what is wanted 100 s after the last turn",
                hold(bleed(3, 0.1), 4.79999, at(10, 5.4)));
    }

    @Test
    void only_a_reading_later_than_five_seconds_tells() {
        assertEquals("no reading yet, hold at most 60 s", hold(bleed(3, 0.1), 4, at(5, 5)));
        assertEquals("torque is down to what is wanted: release now", hold(bleed(3, 0.1), 5, at(5.1, 5), at(4, 6)));
    }

    @Test
    void the_latest_reading_counts() {
        assertEquals("torque is down to what is wanted: release now", hold(bleed(3, 0.1), 5, at(20, 5), at(10, 5.4)));
    }

    @Test
    void a_torque_that_does_not_bleed_stays_above() {
        assertEquals("torque stays above what is wanted", hold(bleed(3, 0), 4, at(10, 5)));
    }

    @Test
    void nothing_wanted_leaves_the_longest_hold() {
        assertEquals(
                "no launch torque wanted, hold at most 45 s",
                HoldWords.of(bleed(3, 0.1), Optional.empty(), List.of(at(10, 5)), 45));
    }
}

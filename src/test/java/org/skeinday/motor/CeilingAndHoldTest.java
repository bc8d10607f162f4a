package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.motor.HoldBleed.Release;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

class CeilingAndHoldTest {
    private static BreakTest broke(String meter, double grams, double turns, double nmm) {
        return new BreakTest(meter, Length.ofInches(18), Mass.ofGrams(grams), turns, Torque.ofNewtonMillimetres(nmm));
    }

    private static Hold hold(double k) {
        List<Hold.Reading> readings = new ArrayList<>();
        readings.add(new Hold.Reading(1, Torque.ofNewtonMillimetres(99))); // creep after back-off, left out
        for (double t : new double[] {6, 10, 20, 40, 90}) {
            readings.add(new Hold.Reading(t, Torque.ofNewtonMillimetres(7 * (1 - k * Math.log10(t)))));
        }
        return Hold.of(readings);
    }

    @Test
    void published_turns_follow_from_length_and_mass() throws IOException {
        for (String[] row : RubberTables.rows("turns-and-torque.csv")) {
            Mass mass = Mass.ofGrams(Double.parseDouble(row[1]));
            Length loop = Length.ofInches(Double.parseDouble(row[2]));
            double turns = BreakingTurns.of(Double.parseDouble(row[3]), loop, mass);
            assertEquals(Double.parseDouble(row[4]), turns, Double.parseDouble(row[5]), row[0]);
        }
    }

    @Test
    void a_section_four_times_as_large_carries_eight_times_the_torque() {
        Torque torque = new Section(8).scaled(Torque.ofNewtonMillimetres(3), new Section(2));
        assertEquals(24, torque.newtonMillimetres(), 1e-12);
        assertEquals(
                4.0, Section.of(Mass.ofGrams(1.86), Length.ofMillimetres(500)).squareMillimetres(), 1e-12);
    }

    @Test
    void torque_scales_as_the_published_rule_of_thumb_does() {
        // indoor free-flight mailing list archive, Oct 2013: Q = (w / (0.11 L))^1.5 in·ozf; 2 g × 20 in gives 0.867
        Section one = Section.of(Mass.ofGrams(1), Length.ofInches(25));
        Section two = Section.of(Mass.ofGrams(2), Length.ofInches(20));
        Torque known = Torque.ofInchOunces(Math.pow(1 / (0.11 * 25), 1.5));
        assertEquals(0.867, two.scaled(known, one).inchOunces(), 5e-4);
    }

    @Test
    void the_ceiling_is_a_share_of_the_median_break_on_the_same_meter() {
        List<BreakTest> tests = List.of(
                broke("A", 2, 2500, 9), broke("A", 2, 2400, 10), broke("A", 2, 2600, 14), broke("B", 2, 2500, 90));
        Section section = Section.of(Mass.ofGrams(2), Length.ofInches(18));
        Ceiling.FromBreakTests ceiling =
                (Ceiling.FromBreakTests) Ceiling.fromBreakTests(tests, "A", section, Ceiling.FIRST_HANDLING);
        assertEquals(7.5, ceiling.torque().newtonMillimetres(), 1e-9);
        assertEquals(3, ceiling.tests());
        assertEquals(
                new Ceiling.NotKnown("torque limit not known: the turns limit ends the wind"),
                Ceiling.fromBreakTests(tests, "C", section, Ceiling.PRACTISED));
    }

    @Test
    void k_of_a_batch_is_the_median_and_says_its_count() {
        BatchK k = BatchK.of(List.of(broke("A", 2, 2400, 9), broke("A", 2, 2500, 9), broke("A", 2, 2900, 9)))
                .orElseThrow();
        assertEquals(BreakingTurns.k(2500, Length.ofInches(18), Mass.ofGrams(2)), k.median(), 1e-9);
        assertEquals(3, k.motors());
        assertTrue(k.meanInterval().orElseThrow().holds(k.median()));
        assertTrue(BatchK.of(List.of()).isEmpty());
    }

    @Test
    void bleed_is_not_known_before_three_holds() {
        HoldBleed two = new HoldBleed(List.of(hold(0.02), hold(0.02)));
        Torque read = Torque.ofNewtonMillimetres(7);
        assertEquals(
                new Release.NotKnown(60, "bleed not known, hold at most 60 s"),
                two.latestRelease(Torque.ofNewtonMillimetres(6), read, 8, HoldBleed.DEFAULT_HOLD_SECONDS));
        assertThrows(IllegalStateException.class, two::k);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.02, 0.05, 0.2})
    void the_latest_release_is_when_the_forecast_reaches_the_torque_wanted(double k) {
        HoldBleed bleed = new HoldBleed(List.of(hold(k), hold(k), hold(k * 1.5), hold(k / 2)));
        assertEquals(k, new HoldBleed(List.of(hold(k), hold(k), hold(k))).k(), 1e-12);
        Torque read = Torque.ofNewtonMillimetres(7);
        Torque wanted = bleed.at(45, read, 8);
        assertTrue(wanted.compareTo(read) < 0);
        Release.Latest latest = (Release.Latest) bleed.latestRelease(wanted, read, 8, 60);
        assertEquals(45, latest.seconds(), 1e-6);
    }
}

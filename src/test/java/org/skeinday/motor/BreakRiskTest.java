package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BreakRiskTest {
    private static final double SHAPE = 14;
    private static final double SCALE = 45;

    private static double at(double share) {
        return SCALE * Math.pow(-Math.log(1 - share), 1 / SHAPE);
    }

    private static BreakTrial trial(String id, double turns, StopRule rule, boolean broke) {
        return new BreakTrial(id, turns, rule, broke);
    }

    /** Ten motors wound to breaking and thirty stopped at 35 to 41 normalised turns. */
    private static List<BreakTrial> day(SplittableRandom random) {
        List<BreakTrial> trials = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double strength = at(random.nextDouble());
            double stop = i < 10 ? Double.MAX_VALUE : 35 + 6 * random.nextDouble();
            StopRule rule = i < 10 ? StopRule.BREAKING : StopRule.COUNT;
            trials.add(trial("m" + i, Math.min(strength, stop), rule, strength <= stop));
        }
        return trials;
    }

    @Test
    void two_breaks_are_too_few_to_tell() {
        BreakRisk risk = BreakEvidence.of(List.of(
                        trial("a", 40, StopRule.BREAKING, true),
                        trial("b", 44, StopRule.BREAKING, true),
                        trial("c", 39, StopRule.TORQUE, true)))
                .at(40);
        assertEquals(new BreakRisk.NotKnown("too few breaks to tell", new BreakRisk.Basis(2, 2, 1)), risk, "not a fit");
    }

    @Test
    void a_motor_counts_once_with_its_last_wind() {
        BreakEvidence evidence = BreakEvidence.of(List.of(
                trial("a", 36, StopRule.COUNT, false),
                trial("a", 38, StopRule.COUNT, false),
                trial("a", 41, StopRule.BREAKING, true)));
        assertEquals(new BreakRisk.Basis(1, 1, 0), evidence.basis());
    }

    @Test
    void a_motor_that_broke_is_never_unbroken_afterwards() {
        BreakEvidence evidence = BreakEvidence.of(List.of(
                trial("a", 36, StopRule.COUNT, false),
                trial("a", 38, StopRule.BREAKING, true),
                trial("a", 41, StopRule.COUNT, false)));
        assertEquals(new BreakRisk.Basis(1, 1, 0), evidence.basis());
    }

    @Test
    void breaks_all_alike_beyond_the_others_give_a_reason_and_no_fit() {
        List<BreakTrial> alike = List.of(
                trial("a", 40, StopRule.BREAKING, true),
                trial("b", 40, StopRule.BREAKING, true),
                trial("c", 40, StopRule.BREAKING, true));
        assertEquals(BreakRisk.Kind.NOT_KNOWN, BreakEvidence.of(alike).at(39).kind());
    }

    /** So many motors wound to breaking. */
    private static BreakRisk.Estimated complete(int motors) {
        List<BreakTrial> trials = new ArrayList<>();
        for (int i = 0; i < motors; i++) {
            trials.add(trial("m" + i, at((i + 0.5) / motors), StopRule.BREAKING, true));
        }
        return (BreakRisk.Estimated) BreakEvidence.of(trials).at(40);
    }

    @Test
    void with_few_motors_the_calibrated_interval_is_the_wider_one_and_below_five_it_says_what_is_not_known() {
        for (int motors = 3; motors <= 12; motors++) {
            BreakRisk.Estimated risk = complete(motors);
            double wide = risk.interval().high() - risk.interval().low();
            assertTrue(
                    wide
                            > risk.profileInterval().high()
                                    - risk.profileInterval().low(),
                    motors + " motors");
            assertEquals(motors < 5, risk.doubt().isPresent(), motors + " motors");
        }
        assertTrue(complete(4).doubt().orElseThrow().contains("is not known with 4 motors"), "says of how many");
    }

    @Test
    void with_many_breaks_both_intervals_come_together_however_the_winds_ended() {
        for (int motors : new int[] {61, 200}) {
            BreakRisk.Estimated risk = complete(motors);
            double wide = risk.interval().high() - risk.interval().low();
            double profile =
                    risk.profileInterval().high() - risk.profileInterval().low();
            assertEquals(1, wide / profile, 0.06, motors + " motors");
        }
    }

    @Test
    void the_same_tests_give_the_same_interval_and_the_one_for_tests_that_end_with_a_break_joins_the_other() {
        assertEquals(complete(7), complete(7));
        List<BreakTrial> trials = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            trials.add(trial("m" + i, at((i + 0.5) / 9), StopRule.BREAKING, true));
        }
        Interval exact = ((BreakRisk.Estimated) BreakEvidence.of(trials).at(40)).interval();
        trials.add(
                trial("early", 1e-3, StopRule.COUNT, false)); // tells nothing, but it is no test that ends with a break
        Interval near = ((BreakRisk.Estimated) BreakEvidence.of(trials).at(40)).interval();
        assertEquals(exact.low(), near.low(), 0.01);
        assertEquals(exact.high(), near.high(), 0.03);
    }

    @Test
    void winds_stopped_on_torque_change_nothing_in_the_fit() {
        List<BreakTrial> trials = day(new SplittableRandom(7));
        BreakRisk.Estimated plain =
                (BreakRisk.Estimated) BreakEvidence.of(trials).at(38);
        trials.add(trial("t", 43, StopRule.TORQUE, false));
        BreakRisk.Estimated more =
                (BreakRisk.Estimated) BreakEvidence.of(trials).at(38);
        assertEquals(plain.interval(), more.interval());
        assertEquals(1, more.basis().torqueStopped());
    }

    @Test
    void the_true_risk_lies_inside_the_90_percent_interval_about_90_times_in_100() {
        double truth = 0.10;
        int inside = 0;
        for (int seed = 1; seed <= 100; seed++) {
            BreakRisk.Estimated risk = (BreakRisk.Estimated)
                    BreakEvidence.of(day(new SplittableRandom(seed))).at(at(truth));
            inside += risk.interval().holds(truth) ? 1 : 0;
        }
        assertTrue(inside >= 85 && inside <= 95, "true risk inside the interval in " + inside + " of 100 seeds");
    }

    @Test
    void taking_stops_on_torque_for_stops_by_count_makes_the_risk_look_small() {
        double truth = 0.10;
        double wrong = 0;
        double ours = 0;
        int low = 0;
        for (int seed = 1; seed <= 100; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<BreakTrial> day = day(random);
            List<BreakTrial> mistaken = new ArrayList<>(day);
            for (int i = 0; i < 40; i++) { // the ceiling lies near each motor's own strength: it goes with torque
                double strength = at(random.nextDouble());
                double stop = strength * Math.exp(-0.10 + 0.07 * random.nextGaussian());
                mistaken.add(trial("t" + i, Math.min(strength, stop), StopRule.COUNT, strength <= stop));
            }
            double said = ((BreakRisk.Estimated) BreakEvidence.of(mistaken).at(at(truth))).probability();
            wrong += said / 100;
            ours += ((BreakRisk.Estimated) BreakEvidence.of(day).at(at(truth))).probability() / 100;
            low += said < truth ? 1 : 0;
        }
        String measured = "true 0.100, ours on average " + ours + ", taken for count " + wrong + ", too low in " + low;
        assertTrue(Math.abs(ours - truth) < 0.02, measured);
        assertTrue(wrong < 0.08 && low > 70, measured);
    }
}

package org.skeinday.motor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** How often the interval of break risk holds the true risk, counted on tests drawn from a known Weibull. */
record RiskCoverage(String cell, int tests, int below, int above, int profileMissed) {
    private static final double SHAPE = 14;
    private static final double SCALE = 45;

    /** How the winds of a test end. */
    enum Design {
        /** All motors are wound to breaking. */
        COMPLETE,
        /** The test ends with the break of six in ten. */
        ENDED_BY_A_BREAK,
        /** Half to breaking, the others stopped by count where 2 to 40 % have broken. */
        HALF_STOPPED_LOW,
        /** Half to breaking, the others stopped by count where 30 to 70 % have broken. */
        HALF_STOPPED_HIGH,
        /** All stopped by count where 80 % have broken. */
        ALL_STOPPED_AT_80
    }

    /** @param risk the true one at the turns asked for */
    static RiskCoverage count(Design design, int motors, double risk, int tests, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double at = turns(risk);
        int done = 0;
        int below = 0;
        int above = 0;
        int profileMissed = 0;
        while (done < tests) {
            if (BreakEvidence.of(test(design, motors, random)).at(at) instanceof BreakRisk.Estimated said) {
                done++;
                below += risk < said.interval().low() ? 1 : 0;
                above += risk > said.interval().high() ? 1 : 0;
                profileMissed += said.profileInterval().holds(risk) ? 0 : 1;
            }
        }
        String cell = String.format(Locale.ROOT, "%s, %d motors, risk %.2f", design, motors, risk);
        return new RiskCoverage(cell, tests, below, above, profileMissed);
    }

    private static double turns(double risk) {
        return SCALE * Math.pow(-Math.log(1 - risk), 1 / SHAPE);
    }

    private static List<BreakTrial> test(Design design, int motors, SplittableRandom random) {
        double[] strength = new double[motors];
        Arrays.setAll(strength, i -> turns(random.nextDouble()));
        double[] sorted = strength.clone();
        Arrays.sort(sorted);
        List<BreakTrial> trials = new ArrayList<>();
        for (int i = 0; i < motors; i++) {
            boolean toBreaking = i < Math.max(3, motors / 2);
            double stop = switch (design) {
                case COMPLETE -> Double.MAX_VALUE;
                case ENDED_BY_A_BREAK -> sorted[Math.max(3, (int) Math.round(0.6 * motors)) - 1];
                case HALF_STOPPED_LOW -> toBreaking ? Double.MAX_VALUE : turns(0.02 + 0.38 * random.nextDouble());
                case HALF_STOPPED_HIGH -> toBreaking ? Double.MAX_VALUE : turns(0.3 + 0.4 * random.nextDouble());
                case ALL_STOPPED_AT_80 -> turns(0.8);
            };
            StopRule rule = stop == Double.MAX_VALUE ? StopRule.BREAKING : StopRule.COUNT;
            trials.add(new BreakTrial("m" + i, Math.min(strength[i], stop), rule, strength[i] <= stop));
        }
        return trials;
    }

    double covered() {
        return 1 - (double) (below + above) / tests;
    }

    double tailBelow() {
        return (double) below / tests;
    }

    double tailAbove() {
        return (double) above / tests;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%-42s covered %.3f, true risk below %.3f, above %.3f; plain profile %.3f",
                cell,
                covered(),
                tailBelow(),
                tailAbove(),
                1 - (double) profileMissed / tests);
    }
}

package org.skeinday.motor;

import java.util.Optional;

/** What the evidence says about breaking at a number of normalised turns. */
public sealed interface BreakRisk {
    /** A word for each kind, for exhaustive switches. */
    enum Kind {
        ESTIMATED,
        NOT_KNOWN
    }

    Kind kind();

    /**
     * The motors and breaks it rests on.
     *
     * @param motors fitted, one row each
     * @param breaks among them
     * @param torqueStopped winds that were stopped on torque: shown, never fitted
     */
    record Basis(int motors, int breaks, int torqueStopped) {}

    Basis basis();

    /**
     * @param probability of breaking before the turns are reached, 0 to 1
     * @param interval that holds the true probability in 90 of 100 such tests: profile likelihood, its limits calibrated
     *     for so many motors and breaks
     * @param profileInterval by the limits for many breaks; with few it is too narrow
     * @param shape of the fitted Weibull: the larger, the closer the breaks lie together
     * @param scale normalised turns at which 63 % have broken
     */
    record Estimated(
            double probability, Interval interval, Interval profileInterval, double shape, double scale, Basis basis)
            implements BreakRisk {
        /** Motors from which on the interval was found to hold what it says. */
        public static final int FEWEST_MOTORS = 5;

        /** What is not known of the interval, in words; empty from {@value #FEWEST_MOTORS} motors on. */
        public Optional<String> doubt() {
            return basis.motors() >= FEWEST_MOTORS
                    ? Optional.empty()
                    : Optional.of("how often such an interval holds the true risk is not known with " + basis.motors()
                            + " motors; test " + FEWEST_MOTORS + " at least");
        }

        @Override
        public Kind kind() {
            return Kind.ESTIMATED;
        }
    }

    /** @param reason in words for the page */
    record NotKnown(String reason, Basis basis) implements BreakRisk {
        @Override
        public Kind kind() {
            return Kind.NOT_KNOWN;
        }
    }
}

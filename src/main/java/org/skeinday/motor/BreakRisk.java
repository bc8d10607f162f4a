package org.skeinday.motor;

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
     * @param interval profile likelihood, same unit
     * @param shape of the fitted Weibull: the larger, the closer the breaks lie together
     * @param scale normalised turns at which 63 % have broken
     */
    record Estimated(double probability, Interval interval, double shape, double scale, Basis basis)
            implements BreakRisk {
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

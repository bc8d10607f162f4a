package org.skeinday.motor;

import java.util.List;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/** The torque at which winding ends even if turns are left to go, or why there is none. */
public sealed interface Ceiling {
    /** Shares of the median torque at break: common practice, editable. */
    double FIRST_HANDLING = 0.75;

    double PRACTISED = 0.85;

    /** A word for each kind, for exhaustive switches. */
    enum Kind {
        FROM_BREAK_TESTS,
        TYPED,
        NOT_KNOWN
    }

    Kind kind();

    /** @param tests on this one meter that it rests on */
    record FromBreakTests(Torque torque, int tests) implements Ceiling {
        @Override
        public Kind kind() {
            return Kind.FROM_BREAK_TESTS;
        }
    }

    record Typed(Torque torque) implements Ceiling {
        @Override
        public Kind kind() {
            return Kind.TYPED;
        }
    }

    record NotKnown(String reason) implements Ceiling {
        @Override
        public Kind kind() {
            return Kind.NOT_KNOWN;
        }
    }

    static Ceiling typed(Torque torque) {
        return new Typed(torque);
    }

    /**
     * A share of the median torque at break on this meter, each test brought to the motor's section by A^1.5.
     *
     * @param share above 0, below 1
     */
    static Ceiling fromBreakTests(List<BreakTest> tests, String meterId, Section motor, double share) {
        Preconditions.share("The ceiling's share", share);
        double[] torques = tests.stream()
                .filter(t -> t.meterId().equals(meterId))
                .mapToDouble(t -> motor.scaled(t.torque(), t.section()).newtonMillimetres())
                .toArray();
        if (torques.length == 0) {
            return new NotKnown("torque limit not known: the turns limit ends the wind");
        }
        double median = Sample.of(torques).median();
        return new FromBreakTests(Torque.ofNewtonMillimetres(share * median), torques.length);
    }
}

package org.skeinday.evidence;

import java.util.List;

/** Why a value is asked about where it comes in. Each names the rule that it breaks. */
public enum Unlikely {
    MORE_OFF_THAN_WOUND(Measured.BACK_OFF, Measured.CRANK_TURNS),
    MORE_LEFT_THAN_WOUND(Measured.REMAINING, Measured.CRANK_TURNS, Measured.BACK_OFF),
    LAUNCH_ABOVE_PEAK(Measured.LAUNCH_TORQUE, Measured.PEAK_TORQUE),
    PEAK_OFF_THE_METER(Measured.PEAK_TORQUE),
    LAUNCH_OFF_THE_METER(Measured.LAUNCH_TORQUE),
    HELD_OFF_THE_METER(Measured.PEAK_TORQUE),
    HELD_ABOVE_PEAK(Measured.PEAK_TORQUE),
    TURNS_BEYOND_BREAKING(Measured.CRANK_TURNS),
    UNUSUAL_TIME(Measured.TIME),
    UNUSUAL_SPEED(Measured.TIME, Measured.CRANK_TURNS, Measured.BACK_OFF, Measured.REMAINING),
    /** By what the server itself saw. */
    LONGER_THAN_PASSED(Measured.TIME);

    /** So many times its breaking turns no motor holds (own default). */
    public static final double TIMES_BREAKING = Possible.BEYOND;

    private final List<Measured> numbers;

    Unlikely(Measured... numbers) {
        this.numbers = List.of(numbers);
    }

    /** The value beside which it is asked. */
    public Measured about() {
        return numbers.get(0);
    }

    /** Of numbers that contradict each other nobody knows which is wrong: all are out of fits until they are confirmed. */
    public List<Measured> numbers() {
        return numbers;
    }
}

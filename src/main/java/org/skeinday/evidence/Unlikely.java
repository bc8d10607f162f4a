package org.skeinday.evidence;

/** Why a value is asked about where it comes in. Each names the rule that it breaks. */
public enum Unlikely {
    MORE_OFF_THAN_WOUND(Measured.BACK_OFF),
    MORE_LEFT_THAN_WOUND(Measured.REMAINING),
    LAUNCH_ABOVE_PEAK(Measured.LAUNCH_TORQUE),
    PEAK_OFF_THE_METER(Measured.PEAK_TORQUE),
    LAUNCH_OFF_THE_METER(Measured.LAUNCH_TORQUE),
    HELD_OFF_THE_METER(Measured.PEAK_TORQUE),
    HELD_ABOVE_PEAK(Measured.PEAK_TORQUE),
    TURNS_BEYOND_BREAKING(Measured.CRANK_TURNS),
    UNUSUAL_TIME(Measured.TIME),
    UNUSUAL_SPEED(Measured.TIME);

    private final Measured about;

    Unlikely(Measured about) {
        this.about = about;
    }

    /** The value that is out of fits until it is confirmed. */
    public Measured about() {
        return about;
    }
}

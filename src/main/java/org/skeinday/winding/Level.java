package org.skeinday.winding;

import org.skeinday.motor.Ceiling;

/** How practised the winder is (shares and turns: common practice). */
public enum Level {
    FIRST_HANDLING(Ceiling.FIRST_HANDLING, WindingPolicy.BACK_OFF_FIRST_HANDLING),
    PRACTISED(Ceiling.PRACTISED, WindingPolicy.BACK_OFF_PRACTISED);

    private final double ceilingShare;
    private final int backOff;

    Level(double ceilingShare, int backOff) {
        this.ceilingShare = ceilingShare;
        this.backOff = backOff;
    }

    /** Share of the median torque at break at which winding ends. */
    public double ceilingShare() {
        return ceilingShare;
    }

    /** Crank turns taken off again before the motor leaves the meter, at least. */
    public int backOff() {
        return backOff;
    }
}

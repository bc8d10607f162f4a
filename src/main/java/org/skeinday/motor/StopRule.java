package org.skeinday.motor;

/** What was to end a wind, as set before the first crank turn. */
public enum StopRule {
    /** Wound on purpose until it broke. */
    BREAKING,
    /** A number of turns. */
    COUNT,
    /** A torque: it stops just those motors that were about to break, so it says too little about breaking. */
    TORQUE;

    /** Whether a motor that was stopped by this rule unbroken is censored independently of its strength. */
    public boolean admitsToFit() {
        return this != TORQUE;
    }
}

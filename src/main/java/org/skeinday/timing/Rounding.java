package org.skeinday.timing;

import java.math.BigInteger;
import org.skeinday.units.EnumWords;

/** How a time is brought to the step of the rules. */
public enum Rounding {
    DOWN("down to"),
    UP("up to"),
    /** To the nearer step; half a step goes up. */
    NEAREST("to the nearest");

    private final String words;

    Rounding(String words) {
        this.words = words;
    }

    /** As the record and files have it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** For people, who read a step after it. */
    public String words() {
        return words;
    }

    /** Rounds the fraction numerator / denominator (ms, zero or more) to whole steps of {@code stepMs}; exact. */
    public long round(BigInteger numerator, BigInteger denominator, long stepMs) {
        BigInteger step = denominator.multiply(BigInteger.valueOf(stepMs));
        BigInteger[] parts = numerator.divideAndRemainder(step);
        BigInteger rest = parts[1];
        boolean up = switch (this) {
            case UP -> rest.signum() > 0;
            case DOWN -> false;
            case NEAREST -> rest.shiftLeft(1).compareTo(step) >= 0;
        };
        BigInteger steps = up ? parts[0].add(BigInteger.ONE) : parts[0];
        return steps.multiply(BigInteger.valueOf(stepMs)).longValueExact();
    }
}

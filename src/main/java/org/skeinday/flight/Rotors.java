package org.skeinday.flight;

import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/**
 * The rotors that carry a model, all alike.
 *
 * @param diameter of each, above 0
 * @param count 1 to 12; those of a coaxial pair are two
 * @param interference κ, by how much the induced power is more than that of as many rotors far apart, 1 to 3: 1 far
 *     apart, 1.28 to 1.41 for close coaxial pairs (J. G. Leishman, Principles of Helicopter Aerodynamics, 2nd ed., §2.15:
 *     measured and the bound √2 of momentum theory)
 * @param merit the figure of merit, ideal power over that which the shaft takes, above 0 and at most 1 (the same, §2.8)
 */
public record Rotors(Length diameter, int count, double interference, double merit) {
    /** κ of rotors that know nothing of each other. */
    public static final double FAR_APART = 1;

    private static final double MOST_INTERFERENCE = 3;
    private static final int MOST_ROTORS = 12;

    public Rotors {
        Preconditions.above("The rotors' diameter", diameter.millimetres(), 0, "mm");
        Preconditions.within("The number of rotors", count, 1, MOST_ROTORS);
        Preconditions.within("The interference", interference, FAR_APART, MOST_INTERFERENCE);
        if (!(merit > 0 && merit <= 1)) {
            throw new IllegalArgumentException("The figure of merit must be above 0 and at most 1, but was " + merit);
        }
    }

    /** A = rotors · πD²/4 in m². */
    double discAreaSquareMetres() {
        double metres = diameter.metres();
        return count * Math.PI * metres * metres / 4;
    }
}

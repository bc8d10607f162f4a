package org.skeinday.motor;

import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * All strands of a motor together, cut across: A = m / (rho · L0).
 *
 * @param squareMillimetres above zero
 */
public record Section(double squareMillimetres) {
    /** Natural rubber, g/cm³: specific gravity 0.93 (Thermopedia, "Natural rubber"). */
    public static final double DEFAULT_DENSITY = 0.93;

    public Section {
        Preconditions.positive("A cross-section in mm²", squareMillimetres);
    }

    public static Section of(Mass mass, Length loop) {
        return of(mass, loop, DEFAULT_DENSITY);
    }

    /** @param density g/cm³, above zero */
    public static Section of(Mass mass, Length loop, double density) {
        Preconditions.positive("Density in g/cm³", density);
        Preconditions.positive("The loop's length in mm", loop.millimetres());
        return new Section(mass.grams() * 1000 / (density * loop.millimetres()));
    }

    /** Torque of this section at the same share of breaking turns: torque goes with A^1.5 (empirical). */
    public Torque scaled(Torque known, Section knownAt) {
        return Torque.ofNewtonMillimetres(
                known.newtonMillimetres() * Math.pow(squareMillimetres / knownAt.squareMillimetres, 1.5));
    }
}

package org.skeinday.motor;

import java.util.List;
import java.util.stream.IntStream;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * One row of the table that helps to choose the next motor's size.
 *
 * @param breakingTurns median motor turns at break
 * @param ceiling scaled to this section
 */
public record NextMotor(Length loop, Mass mass, Section section, double breakingTurns, Torque ceiling) {
    /** Loops shorter than the hook distance cannot be hung; longer than three times it they bunch (own bound). */
    private static final double LONGEST_SHARE = 3;

    /**
     * Motors at the mass limit, from the hook distance upwards in equal steps.
     *
     * @param rows at least two
     * @param knownCeiling of a motor whose section was {@code knownAt}
     */
    public static List<NextMotor> table(
            Mass limit, Length hookDistance, double k, Torque knownCeiling, Section knownAt, int rows) {
        Preconditions.atLeast("The number of rows", rows, 2);
        double step = hookDistance.millimetres() * (LONGEST_SHARE - 1) / (rows - 1);
        return IntStream.range(0, rows)
                .mapToObj(i -> Length.ofMillimetres(hookDistance.millimetres() + i * step))
                .map(loop -> row(loop, limit, k, knownCeiling, knownAt))
                .toList();
    }

    private static NextMotor row(Length loop, Mass mass, double k, Torque knownCeiling, Section knownAt) {
        Section section = Section.of(mass, loop);
        return new NextMotor(
                loop, mass, section, BreakingTurns.of(k, loop, mass), section.scaled(knownCeiling, knownAt));
    }
}

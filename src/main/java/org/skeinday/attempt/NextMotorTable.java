package org.skeinday.attempt;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.motor.NextMotor;

/** The table of sizes for the next motor, with what the last flights suggest beside each. */
public final class NextMotorTable {
    private NextMotorTable() {}

    /**
     * @param suggested whether this is the size nearest to the advice; of all rows one at most
     * @param suggestion in words, never empty
     */
    public record Row(NextMotor motor, boolean suggested, String suggestion) {}

    /**
     * @param sizes all of one mass
     * @param flights in the order in which they were flown
     * @param manyFrom share of the turns from which the remainder counts as many
     */
    public static List<Row> of(List<NextMotor> sizes, List<SizeAdvice.Flown> flights, double manyFrom) {
        if (sizes.stream().map(NextMotor::mass).distinct().count() > 1) {
            throw new IllegalArgumentException("The sizes must be of one mass, but were " + sizes);
        }
        Optional<SizeAdvice> advice = sizes.isEmpty()
                ? Optional.empty()
                : SizeAdvice.of(flights, manyFrom, sizes.get(0).mass());
        return advice.map(a -> rows(sizes, a))
                .orElseGet(() -> sizes.stream()
                        .map(size -> new Row(size, false, "no valid flight with its remaining turns yet"))
                        .toList());
    }

    private static List<Row> rows(List<NextMotor> sizes, SizeAdvice advice) {
        NextMotor nearest = sizes.stream()
                .min(Comparator.comparingDouble(size -> away(size, advice)))
                .orElseThrow();
        return sizes.stream().map(size -> row(size, nearest, advice)).toList();
    }

    private static double away(NextMotor size, SizeAdvice advice) {
        return Math.abs(size.loop().millimetres() - advice.loop().millimetres());
    }

    private static Row row(NextMotor size, NextMotor nearest, SizeAdvice advice) {
        if (size.equals(nearest)) {
            return new Row(size, true, advice.reason());
        }
        boolean longer = size.loop().compareTo(nearest.loop()) > 0;
        return new Row(
                size, false, longer ? "longer and thinner than suggested" : "shorter and thicker than suggested");
    }
}

package org.skeinday.contest;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.units.Misread;

/**
 * A meter's span: known torques and what it showed for them, in one unit, for example {@code 0.2=0.21 | 0.4=0.41 |
 * 0.6=0.60}. Loaded going up and coming down, a point may stand twice.
 */
public record Span(List<Point> points) {
    /** Known torque and reading, in the same unit. */
    public record Point(double known, double reads) {
        /** Of the known torque; 0.05 is 5 %. */
        double error() {
            return reads / known - 1;
        }
    }

    private static final int LEAST_POINTS = 3;

    /** A reading further off than this needs a new calibration (common practice). */
    public static final double MOST_ERROR = 0.05;

    public Span {
        points = List.copyOf(points);
        if (points.stream().map(Point::known).distinct().count() < LEAST_POINTS) {
            throw new Misread(
                    "A span needs three known torques, but has "
                            + points.stream().map(Point::known).distinct().count(),
                    "write known=shown three times, for example 0.2=0.21 | 0.4=0.41 | 0.6=0.60");
        }
    }

    /** @throws Misread saying what cannot be read */
    public static Span parse(String text) {
        List<Point> points = new ArrayList<>();
        for (String part : text.replace(',', '.').split("[|;]", -1)) {
            String[] sides = part.strip().split("\\s*=\\s*", -1);
            points.add(sides.length == 2 ? new Point(number(sides[0]), number(sides[1])) : refuse(part.strip()));
        }
        return new Span(points);
    }

    private static Point refuse(String part) {
        throw new Misread(
                "'" + part + "' is no point of a span", "write known=shown, for example 0.4=0.41, and part them by |");
    }

    private static double number(String text) {
        if (!text.matches("\\d{0,6}\\.?\\d{1,6}") || Double.parseDouble(text) <= 0) {
            throw new Misread("'" + text + "' is no torque above zero", "write for example 0.4=0.41");
        }
        return Double.parseDouble(text);
    }

    /** The largest error, as a share of the known torque, with its sign. */
    public double worst() {
        double worst = 0;
        for (Point point : points) {
            worst = Math.abs(point.error()) > Math.abs(worst) ? point.error() : worst;
        }
        return worst;
    }
}

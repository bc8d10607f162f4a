package org.skeinday.hall;

import java.util.List;
import org.skeinday.units.UnitSystem;

/**
 * A winding place from above, for an SVG of attributes only: mm, x along the lane from the mount at 0, y downwards, so that
 * the left side is up. Shapes stand in the order in which they are drawn.
 */
public record Drawing(
        double leftMm, double topMm, double widthMm, double heightMm, List<Shape> shapes, List<Label> labels) {
    public Drawing {
        shapes = List.copyOf(shapes);
        labels = List.copyOf(labels);
    }

    /** Things whose tape numbers cannot meet are left out; the verdict names them. */
    public static Drawing of(WindingPlace place, Separation separation, Verdict verdict, UnitSystem units) {
        return new Draughtsman(place, separation, verdict, units).drawing();
    }

    /** As the attribute {@code viewBox} has it. */
    public String viewBox() {
        return whole(leftMm) + " " + whole(topMm) + " " + whole(widthMm) + " " + whole(heightMm);
    }

    /** Whole mm, without a minus before zero. */
    static String whole(double mm) {
        return String.valueOf(Math.round(mm));
    }
}

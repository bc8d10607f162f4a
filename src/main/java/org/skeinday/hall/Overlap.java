package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;

/**
 * How deep two convex shapes lie in each other: the least way by which one must be moved to part them. Separating axes:
 * two convex shapes are apart just when their shadows on the normal of some edge are; the shortest overlap of shadows is
 * the way (S. Gottschalk, M. Lin, D. Manocha, OBBTree, SIGGRAPH 1996, section 5; memory).
 */
final class Overlap {
    private Overlap() {}

    /**
     * Zero when they are apart or only touch.
     *
     * @param one corners in order; two of them are a line
     */
    static double depth(List<Spot> one, List<Spot> other) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] axis : axes(one, other)) {
            double[] a = shadow(one, axis);
            double[] b = shadow(other, axis);
            least = Math.min(least, Math.min(a[1] - b[0], b[1] - a[0]));
        }
        return Math.max(0, least);
    }

    private static List<double[]> axes(List<Spot> one, List<Spot> other) {
        List<double[]> axes = new ArrayList<>();
        for (List<Spot> shape : List.of(one, other)) {
            for (int i = 0; i < shape.size(); i++) {
                Spot from = shape.get(i);
                Spot to = shape.get((i + 1) % shape.size());
                double length = from.distanceTo(to);
                axes.add(new double[] {
                    (from.besideMm() - to.besideMm()) / length, (to.alongMm() - from.alongMm()) / length
                });
            }
        }
        return axes;
    }

    private static double[] shadow(List<Spot> shape, double[] axis) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Spot spot : shape) {
            double at = spot.alongMm() * axis[0] + spot.besideMm() * axis[1];
            least = Math.min(least, at);
            most = Math.max(most, at);
        }
        return new double[] {least, most};
    }
}

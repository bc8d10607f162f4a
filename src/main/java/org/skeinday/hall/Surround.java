package org.skeinday.hall;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

/** What stands outside the ground of a drawing: the scale bar under it, the arrow of the drift above it. */
record Surround(Box inner, double text, UnitSystem units) {
    private static final List<Integer> STEPS = List.of(50, 20, 10, 5, 2, 1);

    /** A bar of whole metres or feet, at most a quarter of the width. */
    void scale(List<Shape> shapes, List<Label> labels) {
        int count = STEPS.stream()
                .filter(n -> unit(n).millimetres() <= inner.width() / 4)
                .findFirst()
                .orElse(1);
        double y = inner.bottom() + text;
        double right = inner.left() + unit(count).millimetres();
        shapes.add(new Shape(
                Shape.Form.LINE, Shape.Role.SCALE, List.of(new Spot(inner.left(), y), new Spot(right, y)), 0, false));
        String words = count + (units.isMetric() ? " m" : " ft");
        labels.add(new Label(words, right + text / 2, y + 0.35 * text, Label.Anchor.START, text, false));
    }

    private Length unit(int n) {
        return units.isMetric() ? Length.ofMetres(n) : Length.ofFeet(n);
    }

    void drift(@Nullable Air air, List<Shape> shapes, List<Label> labels) {
        if (air == null) {
            return;
        }
        double half = 2 * text;
        Spot middle = new Spot(inner.left() + half, inner.top() - half);
        double angle = Math.toRadians(air.towardsDegrees());
        double dx = half * Math.cos(angle);
        double dy = half * Math.sin(angle);
        Spot from = new Spot(middle.alongMm() - dx, middle.besideMm() - dy);
        Spot to = new Spot(middle.alongMm() + dx, middle.besideMm() + dy);
        shapes.addAll(arrow(from, to, Shape.Role.DRIFT, text));
        String words = air.metresPerSecond() == null ? "drift" : "drift " + speed(air.metresPerSecond());
        double x = middle.alongMm() + half + text;
        labels.add(new Label(words, x, middle.besideMm() + 0.35 * text, Label.Anchor.START, text, false));
    }

    /** A metre per second is 3.28 feet per second. */
    private String speed(double metresPerSecond) {
        return units.isMetric()
                ? String.format(Locale.ROOT, "%.2f m/s", metresPerSecond)
                : String.format(Locale.ROOT, "%.1f ft/s", metresPerSecond / 0.3048);
    }

    /** A shaft and a head, in the coordinates of the drawing. */
    static List<Shape> arrow(Spot from, Spot to, Shape.Role role, double head) {
        double length = from.distanceTo(to);
        double ux = (to.alongMm() - from.alongMm()) / length;
        double uy = (to.besideMm() - from.besideMm()) / length;
        double x = to.alongMm() - head * ux;
        double y = to.besideMm() - head * uy;
        double half = head * 0.4;
        List<Spot> triangle =
                List.of(to, new Spot(x - half * uy, y + half * ux), new Spot(x + half * uy, y - half * ux));
        return List.of(
                new Shape(Shape.Form.LINE, role, List.of(from, new Spot(x, y)), 0, false),
                new Shape(Shape.Form.AREA, role, triangle, 0, false));
    }
}

package org.skeinday.hall;

import java.util.List;

/** An upright rectangle of a drawing, mm. */
record Box(double left, double top, double right, double bottom) {
    static Box around(List<Spot> spots) {
        return new Box(
                spots.stream().mapToDouble(Spot::alongMm).min().orElse(0),
                spots.stream().mapToDouble(Spot::besideMm).min().orElse(0),
                spots.stream().mapToDouble(Spot::alongMm).max().orElse(0),
                spots.stream().mapToDouble(Spot::besideMm).max().orElse(0));
    }

    static List<Spot> corners(double left, double top, double right, double bottom) {
        return List.of(new Spot(left, top), new Spot(right, top), new Spot(right, bottom), new Spot(left, bottom));
    }

    static List<Spot> square(Spot middle, double half) {
        return corners(
                middle.alongMm() - half, middle.besideMm() - half, middle.alongMm() + half, middle.besideMm() + half);
    }

    double width() {
        return right - left;
    }

    double height() {
        return bottom - top;
    }

    Box grownBy(double mm) {
        return new Box(left - mm, top - mm, right + mm, bottom + mm);
    }
}

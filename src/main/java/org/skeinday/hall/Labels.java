package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;

/**
 * Puts words beside what they name: each takes the first place around it that hits no earlier word, no dot and no line,
 * else the place that hits least.
 */
final class Labels {
    /** Rings of places, each a line of text further out. */
    private static final int RINGS = 6;

    private static final double GAP = 0.35;

    private final double height;
    private final List<List<Spot>> taken = new ArrayList<>();
    private final List<Label> placed = new ArrayList<>();

    /** @param heightMm of the letters */
    Labels(double heightMm) {
        this.height = heightMm;
    }

    /** Ground that words stay away from: two corners are a line. */
    void avoid(List<Spot> shape) {
        taken.add(shape);
    }

    /**
     * @param radius of the dot that the word names
     */
    void put(String text, Spot at, double radius, boolean broken) {
        Label best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Label candidate : around(text, at, radius, broken)) {
            double hit = hit(candidate);
            if (hit < least) {
                best = candidate;
                least = hit;
            }
        }
        if (best != null) {
            placed.add(best);
            taken.add(best.box());
        }
    }

    List<Label> placed() {
        return List.copyOf(placed);
    }

    private double hit(Label candidate) {
        return taken.stream()
                .mapToDouble(shape -> Overlap.depth(candidate.box(), shape))
                .sum();
    }

    private List<Label> around(String text, Spot at, double radius, boolean broken) {
        List<Label> places = new ArrayList<>();
        double x = at.alongMm();
        double y = at.besideMm();
        for (int ring = 0; ring < RINGS; ring++) {
            double out = radius + GAP * height + ring * 1.3 * height;
            double middle = y + 0.35 * height;
            places.add(new Label(text, x, y - out, Label.Anchor.MIDDLE, height, broken));
            places.add(new Label(text, x, y + out + height, Label.Anchor.MIDDLE, height, broken));
            places.add(new Label(text, x + out, middle, Label.Anchor.START, height, broken));
            places.add(new Label(text, x - out, middle, Label.Anchor.END, height, broken));
            places.add(new Label(text, x + out, y - out, Label.Anchor.START, height, broken));
            places.add(new Label(text, x - out, y - out, Label.Anchor.END, height, broken));
            places.add(new Label(text, x + out, y + out + height, Label.Anchor.START, height, broken));
            places.add(new Label(text, x - out, y + out + height, Label.Anchor.END, height, broken));
        }
        return places;
    }
}

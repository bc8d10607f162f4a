package org.skeinday.hall;

import java.util.List;
import java.util.Locale;

/**
 * A word in a {@link Drawing}: x and y in mm are where its text starts, is centred or ends, on the base line.
 *
 * @param text at most {@link #LONGEST} characters, a longer one is cut
 * @param heightMm of its letters, as the attribute {@code font-size} has it
 * @param broken whether what it names is too close to something
 */
public record Label(String text, double xMm, double yMm, Anchor anchor, double heightMm, boolean broken) {
    static final int LONGEST = 24;

    /** As wide as a letter is at most on average, in its height: capitals and digits of common sans-serif fonts. */
    private static final double WIDTH = 0.62;

    /** How far letters like g go below the base line. */
    private static final double BELOW = 0.25;

    public enum Anchor {
        START,
        MIDDLE,
        END;

        /** As the attribute {@code text-anchor} has it. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Label {
        text = text.length() > LONGEST ? text.substring(0, LONGEST - 1).stripTrailing() + "…" : text;
    }

    public String x() {
        return Drawing.whole(xMm);
    }

    public String y() {
        return Drawing.whole(yMm);
    }

    public String fontSize() {
        return Drawing.whole(heightMm);
    }

    /** The corners of the room that the text takes, on the safe side. */
    List<Spot> box() {
        double wide = text.length() * WIDTH * heightMm;
        double left = switch (anchor) {
            case START -> xMm;
            case MIDDLE -> xMm - wide / 2;
            case END -> xMm - wide;
        };
        return Box.corners(left, yMm - heightMm, left + wide, yMm + BELOW * heightMm);
    }
}

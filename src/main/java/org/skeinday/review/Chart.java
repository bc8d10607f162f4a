package org.skeinday.review;

import java.util.List;
import org.skeinday.units.Preconditions;

/**
 * A picture laid out for black ink: only what SVG attributes need, in its units, y downwards. Series differ by the shape
 * of their marks and by dashes, never by colour. A template draws lines, paths, marks and texts as they come.
 *
 * @param title of the picture, for the element of that name: it is not drawn
 */
public record Chart(
        int width, int height, String title, List<Line> lines, List<Path> paths, List<Mark> marks, List<Text> texts) {
    /** Width of a figure at font size 12 in most sans-serif faces, rounded up: text is laid out with it. */
    static final double LETTER = 7.2;

    static final double FONT = 12;

    /** Frame and ticks. */
    public record Line(double x1, double y1, double x2, double y2) {}

    /**
     * @param d data of the path
     * @param fill the paint: none, or a light grey for a band
     * @param stroke the same for the line
     * @param dash empty for a full line
     */
    public record Path(String d, String fill, String stroke, String dash, double strokeWidth) {}

    /**
     * A point of a flight.
     *
     * @param d data of its path, around (0, 0) moved to its place
     * @param fill black, or white for one that does not count
     * @param label what it is, for its title
     */
    public record Mark(String d, String fill, String id, String label) {}

    /**
     * @param anchor start, middle or end
     * @param turned whether it is turned by −90° about (x, y)
     */
    public record Text(double x, double y, String anchor, boolean turned, String words) {
        double wide() {
            return words.length() * LETTER;
        }

        /** Left edge of a text that is not turned. */
        double left() {
            return switch (anchor) {
                case "middle" -> x - wide() / 2;
                case "end" -> x - wide();
                default -> x;
            };
        }
    }

    /** @param width 300 or more, {@code height} 200 or more */
    public static Chart of(Picture picture, int width, int height) {
        Preconditions.withinIfKnown("The width of a chart", width, 300, 5000);
        Preconditions.withinIfKnown("The height of a chart", height, 200, 5000);
        return new ChartDrawing(picture, width, height).chart();
    }
}

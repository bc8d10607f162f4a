package org.skeinday.review.web;

import java.util.List;
import org.skeinday.review.Chart;
import org.skeinday.review.Picture;

/**
 * A picture with the table behind it.
 *
 * @param more what the table leaves out, empty for nothing
 */
public record ChartView(String title, Chart chart, List<String> head, List<List<String>> rows, String more) {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 400;
    private static final int MOST_ROWS = 200;

    static ChartView of(Picture picture) {
        int all = picture.rows().size();
        return new ChartView(
                picture.title(),
                Chart.of(picture, WIDTH, HEIGHT),
                picture.head(),
                picture.rows().subList(0, Math.min(all, MOST_ROWS)),
                all > MOST_ROWS ? "The first " + MOST_ROWS + " of " + all + " rows; all are in the files." : "");
    }
}

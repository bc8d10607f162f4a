package org.skeinday.bench.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;

/**
 * The Winding page in finished words.
 *
 * @param none why nothing is wound, empty when there is an attempt
 * @param problem why this motor must not be wound, empty when it may
 * @param direction the first thing to check
 * @param lacks which figures cannot be computed, in words
 * @param wind id of the wind, empty before the first crank turn
 * @param own whether this device reads it, or nobody does yet
 * @param quiet whether only the reader may see it
 */
public record WindingView(
        String title,
        String none,
        String attempt,
        String problem,
        String direction,
        List<BenchView.Line> plan,
        List<FloorMark> floor,
        List<String> lacks,
        String wind,
        boolean own,
        boolean quiet,
        boolean isOver,
        @Nullable Live live,
        Reader reader,
        @Nullable After after) {
    public record FloorMark(int number, String turns, String distance) {}

    /** What the others see while it happens. */
    public record Live(String torque, String word, String mark, String phase) {}

    /** What the reader's script needs. Figures that are not known are empty. */
    public record Reader(
            String began,
            String perMark,
            String unit,
            String atFull,
            String target,
            String ceilingLevel,
            String floorCounts,
            String floorWords,
            String backOff) {}

    /**
     * After the wind: its turns, doubts and figures.
     *
     * @param lead what is asked for, while nobody has counted
     * @param broke whether the turns are those at a break
     */
    public record After(
            String atFull,
            String stop,
            String backOff,
            boolean counted,
            List<DoubtLine> doubts,
            List<BenchView.Line> figures,
            String lead,
            boolean broke,
            FormErrors form) {
        public String wrong(String field) {
            return form.message(field);
        }
    }

    public record DoubtLine(String mark, String words) {}
}

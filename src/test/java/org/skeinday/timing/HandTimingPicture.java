package org.skeinday.timing;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import org.skeinday.timing.HandTiming.Outcome;
import org.skeinday.timing.HandTiming.Way;

/** The errors of each way as one hill above one scale, in SVG. */
final class HandTimingPicture {
    private static final int BIN_MS = 10;
    private static final int EDGE_MS = 350;
    private static final int ROW = 74;
    private static final int TOP = 92;
    private static final int LEFT = 150;
    private static final int WIDTH = 420;

    private HandTimingPicture() {}

    static String svg(Map<Way, Outcome> outcomes) {
        Outcome one = outcomes.get(Way.ONE);
        int bottom = TOP + ROW * outcomes.size();
        StringBuilder svg = new StringBuilder();
        add(
                svg,
                "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 760 %d' font-family='sans-serif' fill='#222'>",
                bottom + 58);
        add(svg, "<title>%s</title>", title(outcomes));
        add(svg, "<rect width='760' height='%d' fill='#fff'/>", bottom + 58);
        add(svg, "<text x='20' y='32' font-size='18' font-weight='bold'>%s</text>", title(outcomes));
        add(
                svg,
                "<text x='20' y='56' font-size='14'>Error of the official time when each press is off by 0.07 s (SD); %,d flights each</text>",
                one.errorsMs().length);
        for (int s = -3; s <= 3; s++) {
            add(svg, "<path d='M%.1f %d V%d' stroke='%s'/>", x(s * 100), TOP - 16, bottom, s == 0 ? "#222" : "#ddd");
            add(
                    svg,
                    "<text x='%.1f' y='%d' font-size='13' text-anchor='middle'>%s</text>",
                    x(s * 100),
                    bottom + 20,
                    s == 0
                            ? "true"
                            : String.format(Locale.ROOT, "%+.1f s", s / 10.0).replace('-', '−'));
        }
        int base = TOP - 20;
        for (var entry : outcomes.entrySet()) {
            base += ROW;
            row(svg, entry.getKey(), entry.getValue(), one, base);
        }
        add(
                svg,
                "<text x='20' y='%d' font-size='13'>Dark tick: mean. Bar below each hill: the middle 95 of 100 flights.</text>",
                bottom + 46);
        return svg.append("</svg>\n").toString();
    }

    /** The finding, from the figures themselves. */
    static String title(Map<Way, Outcome> outcomes) {
        double cut = 1
                - outcomes.get(Way.MIDDLE_OF_THREE).sd() / outcomes.get(Way.ONE).sd();
        return String.format(
                Locale.ROOT,
                "The middle of three cuts the spread by %.0f %%; the longer of two reads %.2f s long",
                cut * 100,
                outcomes.get(Way.LONGER_OF_TWO).mean() / 1000);
    }

    private static void row(StringBuilder svg, Way way, Outcome outcome, Outcome one, int base) {
        String colour = way == Way.MIDDLE_OF_THREE || way == Way.LONGER_OF_TWO ? "#0b5c8a" : "#8aa4b4";
        add(svg, "<text x='20' y='%d' font-size='15'>%s</text>", base, way.words);
        add(svg, "<path d='%s' fill='%s'/>", hill(outcome, base), colour);
        long[] sorted = outcome.errorsMs().clone();
        Arrays.sort(sorted);
        double low = x(sorted[(int) (sorted.length * 0.025)]);
        double high = x(sorted[(int) (sorted.length * 0.975)]);
        add(svg, "<path d='M%.1f %d H%.1f' stroke='%s' stroke-width='4'/>", low, base + 5, high, colour);
        add(svg, "<path d='M%.1f %d V%d' stroke='#222' stroke-width='3'/>", x(outcome.mean()), base - 6, base + 10);
        add(
                svg,
                "<text x='590' y='%d' font-size='14'>SD %.3f s (%.0f %%)</text>",
                base,
                outcome.sd() / 1000,
                100 * outcome.sd() / one.sd());
    }

    private static String hill(Outcome outcome, int base) {
        int[] bins = new int[2 * EDGE_MS / BIN_MS];
        for (long error : outcome.errorsMs()) {
            int bin = (int) Math.floorDiv(error + EDGE_MS, (long) BIN_MS);
            if (bin >= 0 && bin < bins.length) {
                bins[bin]++;
            }
        }
        StringBuilder path = new StringBuilder();
        add(path, "M%.1f %d", x(-EDGE_MS), base);
        for (int bin = 0; bin < bins.length; bin++) {
            double share = (double) bins[bin] / outcome.errorsMs().length;
            add(path, " L%.1f %.1f", x(-EDGE_MS + bin * BIN_MS + BIN_MS / 2.0), base - share * 780);
        }
        return path.toString().replace("\n", "") + String.format(Locale.ROOT, " L%.1f %d Z", x(EDGE_MS), base);
    }

    private static double x(double errorMs) {
        return LEFT + WIDTH * (errorMs + EDGE_MS) / (2.0 * EDGE_MS);
    }

    private static void add(StringBuilder svg, String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}

package org.skeinday.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The table of figures: what was promised, what was measured, the bare least of the same run, the ratio. */
final class LoadFigures {
    private final List<String> rows = new ArrayList<>();

    /** Waits in milliseconds at one share of all. */
    void add(String what, String target, double share, Percentiles ours, @Nullable Percentiles bare) {
        String name = String.format(Locale.ROOT, "%s, p%.0f", what, share * 100);
        if (bare == null) {
            add(name, target, String.format(Locale.ROOT, "%.1f ms", ours.ms(share)));
            return;
        }
        row(
                name,
                target,
                String.format(Locale.ROOT, "%.1f ms", ours.ms(share)),
                String.format(Locale.ROOT, "%.1f ms", bare.ms(share)),
                String.format(Locale.ROOT, "%.1f", ours.ms(share) / bare.ms(share)));
    }

    /** Two figures of one unit. */
    void add(String what, String target, double ours, double bare, String unit) {
        row(
                what,
                target,
                String.format(Locale.ROOT, "%.1f %s", ours, unit),
                String.format(Locale.ROOT, "%.1f %s", bare, unit),
                String.format(Locale.ROOT, "%.1f", ours / bare));
    }

    void add(String what, String target, String measured) {
        row(what, target, measured, "", "");
    }

    private void row(String what, String target, String measured, String bare, String ratio) {
        rows.add("| " + String.join(" | ", what, target, measured, bare, ratio) + " |");
    }

    String text() {
        return "| what | target | measured | bare | ratio |\n| --- | --- | --- | --- | --- |\n"
                + String.join("\n", rows);
    }
}

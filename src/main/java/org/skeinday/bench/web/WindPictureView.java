package org.skeinday.bench.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A wind as points of a drawing.
 *
 * @param band the batch's, as a polygon; empty without one
 * @param wound while winding, {@code unwound} while turns were taken off: two curves that are never one
 * @param said the same in words, for whoever does not see it
 */
public record WindPictureView(
        String band,
        String wound,
        String unwound,
        List<Dot> dots,
        @Nullable Level ceiling,
        @Nullable Level wanted,
        List<Tick> across,
        List<Tick> up,
        String acrossWords,
        String upWords,
        String said) {
    /** None, and why in words. */
    static WindPictureView none(String words) {
        return new WindPictureView("", "", "", List.of(), null, null, List.of(), List.of(), "", "", words);
    }

    public boolean isDrawn() {
        return !upWords.isEmpty();
    }

    public record Dot(String x, String y) {}

    public record Level(String y, String words) {}

    public record Tick(String at, String words) {}
}

package org.skeinday.prepare.web;

import java.util.List;

/**
 * Making motors, in finished words: what was asked and what it comes to.
 *
 * @param unit in which a bare length of a loop or knot is taken
 * @param pieceUnit the same of the piece of strip
 */
public record MakingView(
        String loops,
        String knot,
        String piece,
        String weighs,
        String problem,
        List<Cut> cuts,
        List<Pair> pairs,
        String unit,
        String pieceUnit) {
    /** Strip to cut for a loop, and what it should weigh. */
    public record Cut(String loop, String strip, String weighs) {}

    /** Two motors of one batch that go together. */
    public record Pair(String batch, String motors, String masses, String difference) {}
}

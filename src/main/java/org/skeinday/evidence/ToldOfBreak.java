package org.skeinday.evidence;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was told of a motor that broke without a wind that was read; null where nobody told it.
 *
 * @param motorTurns in it
 * @param scale of the torque meter, null while not known
 * @param breakingTurns motor turns at which such a motor breaks, null while not known
 */
public record ToldOfBreak(
        @Nullable Double motorTurns,
        @Nullable Double torqueNmm,
        @Nullable MeterScale scale,
        @Nullable Double breakingTurns) {
    /** What is doubtful of it, turns first. */
    public List<Doubted> doubts() {
        List<Doubted> doubts = new ArrayList<>();
        if (motorTurns != null) {
            Possible.turns("That is ", motorTurns, breakingTurns).ifPresent(doubts::add);
        }
        Possible.offMeter(Unlikely.PEAK_OFF_THE_METER, torqueNmm, scale).ifPresent(doubts::add);
        return List.copyOf(doubts);
    }

    private static final String ASKED_BEFORE = "it was asked about where it was read";

    /** The turns, in motor turns, or the torque; null where nobody told it. */
    public @Nullable Double number(Measured what) {
        return what == Measured.CRANK_TURNS ? motorTurns : torqueNmm;
    }

    /** Of the turns or of the torque, what a person has not confirmed, in words; empty when nothing is. */
    public String open(Measured what, ValueMarks marks) {
        Double number = number(what);
        return doubts().stream()
                .filter(doubt -> doubt.about() == what && !marks.isConfirmed(what, number))
                .map(Doubted::words)
                .findFirst()
                .orElse(marks.isAsked(what, number) ? ASKED_BEFORE : "");
    }
}

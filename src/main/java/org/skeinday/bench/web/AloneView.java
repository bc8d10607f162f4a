package org.skeinday.bench.web;

import java.util.List;
import org.skeinday.motor.StopRule;
import org.skeinday.steps.Cautions;

/**
 * A motor wound without an attempt, in finished words.
 *
 * @param winding as for an attempt
 * @param row the motor as on the Bench, with what to do to it next
 * @param address of this page, with what was asked for
 * @param part address of the part that refreshes
 * @param stop what ends the wind: count or breaking
 * @param done ids of its winds that are over, for the reader's script to forget
 * @param again address of a new wind while the last one is not counted, empty when there is none to pass by
 * @param others winding places where it could be wound instead; empty from the first crank turn on
 * @param past its winds without an attempt so far
 * @param asked those of them that wait for a word, or are left out
 * @param problem why the last word was not taken, empty when it was
 */
public record AloneView(
        WindingView winding,
        BenchView.Row row,
        String batch,
        String address,
        String part,
        StopRule stop,
        String done,
        String again,
        List<Elsewhere> others,
        List<BenchView.Line> past,
        List<WindQuestion> asked,
        String problem) {
    /** @param address of this page there */
    public record Elsewhere(String words, String address) {}

    /** The same with what this person reads before the first crank turn. @param today ISO date in the hall */
    AloneView cautioned(List<Cautions.Shown> cautions, String today) {
        return new AloneView(
                winding.cautioned(cautions, today),
                row,
                batch,
                address,
                part,
                stop,
                done,
                again,
                others,
                past,
                asked,
                problem);
    }

    public boolean isBreaking() {
        return stop == StopRule.BREAKING;
    }
}

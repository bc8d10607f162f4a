package org.skeinday.bench.web;

import java.util.List;
import org.skeinday.steps.Cautions;

/**
 * The break test of one batch, in finished words.
 *
 * @param known what it comes to so far
 * @param toGo how many more are wanted
 * @param next motors that may be wound until they break, the best first
 * @param not motors that may not, with the reason
 * @param cautions in full for who meets them first on {@code today}
 */
public record BreakTestView(
        String batch,
        String name,
        List<Found> found,
        List<BenchView.Line> known,
        String toGo,
        List<Candidate> next,
        List<BenchView.Line> not,
        boolean captain,
        List<Cautions.Shown> cautions,
        String today) {
    /** The same with what this person reads first. @param day ISO date in the hall */
    BreakTestView cautioned(List<Cautions.Shown> shown, String day) {
        return new BreakTestView(batch, name, found, known, toGo, next, not, captain, shown, day);
    }

    /** One motor that broke. What is not known is a dash. @param kind what the break counts as */
    public record Found(String motor, String tag, String turns, String k, String torque, String meter, String kind) {}

    /** @param about its stage, uses and what else may need it */
    public record Candidate(String motor, String tag, String about) {}
}

package org.skeinday.attempt.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.BackwardSum;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.StepTimes;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.WindowAdded;

/** What is left of the window after the next attempt, and what the sum rests on: lines of its card. */
final class TimeLeft {
    private static final long MINUTE_MS = 60_000;

    private TimeLeft() {}

    /** Before the call. */
    static List<NowView.Line> of(Today today, EntryAdded entry, BackwardSum sum, WindowAdded window, long nowMs) {
        long left = sum.leftAfterMs(nowMs, window.opensAtMs(), window.closesAtMs(), null, nowMs);
        int others = today.tally(entry).flightsLeft() - 1;
        return List.of(line(sum, left, others), new NowView.Line("counted for it", sum.basis()));
    }

    /** While it is prepared, wound or carried. */
    static NowView.Line of(
            Today today,
            EntryAdded entry,
            BackwardSum sum,
            WindowAdded window,
            AttemptPhase phase,
            StepTimes steps,
            long nowMs) {
        Part running = part(phase.name());
        Long since = running == null ? null : steps.began(running);
        long left =
                sum.leftAfterMs(nowMs, window.opensAtMs(), window.closesAtMs(), running, since == null ? nowMs : since);
        return line(sum, left, today.tally(entry).flightsLeft() - 1);
    }

    private static NowView.Line line(BackwardSum sum, long leftMs, int others) {
        String minutes = "about " + leftMs / MINUTE_MS + " min of the window";
        int fit = Math.min(others, sum.fit(leftMs));
        return new NowView.Line("left after it", others < 1 ? minutes : minutes + ": " + more(fit, others));
    }

    private static String more(int fit, int others) {
        if (fit == 0) {
            return "not enough for another attempt";
        }
        return fit == others
                ? "enough for the " + (others == 1 ? "other attempt" : others + " other attempts")
                : "enough for " + fit + " of " + others + " more";
    }

    /** More turns are wound again, whatever the record's state was before them. */
    private static @Nullable Part part(AttemptPhase.Name phase) {
        return switch (phase) {
            case CALLED -> Part.PREPARE;
            case WINDING -> Part.WIND;
            case HOLDING -> Part.LOAD;
            case IN_THE_AIR -> Part.FLY;
            case LANDED -> Part.RUN_BACK;
            case NEXT, BROKE, RUN_BACK, OFFICIAL, ABANDONED, VOID -> null;
        };
    }
}

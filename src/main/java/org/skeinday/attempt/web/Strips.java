package org.skeinday.attempt.web;

import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.PhaseStrip;
import org.skeinday.steps.web.StripView;

/** The strip of phases as pages of every room show it. */
public final class Strips {
    private Strips() {}

    public static StripView of(LiveAttempt attempt) {
        return view(PhaseStrip.of(attempt));
    }

    static StripView view(PhaseStrip strip) {
        return new StripView(strip.steps().stream().map(Strips::step).toList());
    }

    private static StripView.Step step(PhaseStrip.Step step) {
        return new StripView.Step(
                step.words(),
                switch (step.mark()) {
                    case DONE -> "done";
                    case NOW -> "now";
                    case EXIT -> "now stopped";
                    case LATER -> "later";
                });
    }
}

package org.skeinday.attempt;

import java.util.Optional;
import java.util.OptionalLong;
import org.skeinday.timing.FlightWindow;

/**
 * The one number of a page about an attempt: what it says, and how it runs.
 *
 * @param ms epoch ms that it counts down to or up from; for one that stands, its duration in ms; 0 for none
 */
public record OneNumber(Says says, long ms) {
    /** How a number runs. */
    public enum Runs {
        DOWN_TO,
        UP_FROM,
        STANDS,
        NOT
    }

    /** What a number says. */
    public enum Says {
        NOTHING(Runs.NOT),
        WINDOW_OPENS(Runs.DOWN_TO),
        LATEST_START(Runs.DOWN_TO),
        WINDOW_CLOSES(Runs.DOWN_TO),
        LAST_CALL(Runs.DOWN_TO),
        WINDOW_CLOSED(Runs.DOWN_TO),
        /** After a collision: the time left to choose. */
        CHOICE_ENDS(Runs.DOWN_TO),
        WINDING(Runs.UP_FROM),
        /** Since the last turn; calm, it hurries nobody. */
        HELD(Runs.UP_FROM),
        IN_THE_AIR(Runs.UP_FROM),
        OFFICIAL(Runs.STANDS);

        private final Runs runs;

        Says(Runs runs) {
            this.runs = runs;
        }
    }

    public static final OneNumber NONE = new OneNumber(Says.NOTHING, 0);

    public Runs runs() {
        return says.runs;
    }

    /**
     * What counts in this phase.
     *
     * @param window of its entry; empty for none
     * @param latestStart of winding, epoch ms; empty where it is not known or too late
     * @param choiceEnds after a collision, epoch ms; empty for none
     */
    public static OneNumber of(
            LiveAttempt attempt,
            Optional<FlightWindow> window,
            OptionalLong latestStart,
            OptionalLong choiceEnds,
            long nowMs) {
        AttemptPhase phase = attempt.phase();
        return switch (phase.name()) {
            case NEXT, CALLED -> beforeWinding(window, latestStart, nowMs);
            case WINDING -> new OneNumber(Says.WINDING, phase.since().orElse(0L));
            case HOLDING -> new OneNumber(Says.HELD, phase.since().orElse(0L));
            case IN_THE_AIR ->
                choiceEnds.isPresent()
                        ? new OneNumber(Says.CHOICE_ENDS, choiceEnds.getAsLong())
                        : new OneNumber(Says.IN_THE_AIR, phase.since().orElse(0L));
            case LANDED -> choiceEnds.isPresent() ? new OneNumber(Says.CHOICE_ENDS, choiceEnds.getAsLong()) : NONE;
            case OFFICIAL -> new OneNumber(Says.OFFICIAL, ((AttemptPhase.Official) phase).officialMs());
            case BROKE, RUN_BACK, ABANDONED, VOID -> NONE;
        };
    }

    private static OneNumber beforeWinding(Optional<FlightWindow> window, OptionalLong latestStart, long nowMs) {
        if (window.isEmpty()) {
            return NONE;
        }
        FlightWindow w = window.get();
        boolean ahead = w.at(nowMs) == FlightWindow.Phase.AHEAD;
        if (!ahead && latestStart.isPresent() && latestStart.getAsLong() > nowMs) {
            return new OneNumber(Says.LATEST_START, latestStart.getAsLong());
        }
        return switch (w.at(nowMs)) {
            case AHEAD -> new OneNumber(Says.WINDOW_OPENS, w.opensMs());
            case OPEN -> new OneNumber(Says.WINDOW_CLOSES, w.closesMs());
            case LAST_CALL -> new OneNumber(Says.LAST_CALL, w.closesMs());
            case CLOSED -> new OneNumber(Says.WINDOW_CLOSED, w.closesMs());
        };
    }
}

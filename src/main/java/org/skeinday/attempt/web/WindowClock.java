package org.skeinday.attempt.web;

import java.util.Optional;
import org.skeinday.timing.FlightWindow;

/**
 * A window as a running clock.
 *
 * @param label what runs, in words
 * @param until epoch ms that it counts down to; 0 for no clock
 * @param then epoch ms at which the words are others, 0 for no such moment
 * @param lastCall whether the last call is made
 */
public record WindowClock(String label, long until, long then, boolean lastCall) {
    private static final WindowClock NONE = new WindowClock("", 0, 0, false);

    static WindowClock of(Optional<FlightWindow> window, long nowMs) {
        return window.map(w -> of(w, nowMs)).orElse(NONE);
    }

    private static WindowClock of(FlightWindow w, long nowMs) {
        return switch (w.at(nowMs)) {
            case AHEAD -> new WindowClock("the window opens in", w.opensMs(), w.opensMs(), false);
            case OPEN ->
                new WindowClock(
                        "the window closes in",
                        w.closesMs(),
                        w.lastCallMs() > 0 ? w.lastCallAtMs() : w.closesMs(),
                        false);
            case LAST_CALL -> new WindowClock("Last call: the window closes in", w.closesMs(), w.closesMs(), true);
            case CLOSED -> new WindowClock("the window is closed since", w.closesMs(), 0, false);
        };
    }

    public boolean isThere() {
        return until > 0;
    }
}

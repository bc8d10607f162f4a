package org.skeinday.attempt.web;

import java.util.Optional;
import org.skeinday.attempt.action.StartWindow;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.timing.FlightWindow;

/**
 * A window as a running clock.
 *
 * @param label what runs, in words
 * @param until epoch ms that it counts down to; 0 for no clock
 * @param then epoch ms at which the words are others, 0 for no such moment
 * @param lastCall whether the last call is made
 * @param opensMs when it opens or opened, epoch ms; 0 for no window
 * @param started whether somebody tapped that it starts, and it is open
 */
public record WindowClock(String label, long until, long then, boolean lastCall, long opensMs, boolean started) {
    static final WindowClock NONE = new WindowClock("", 0, 0, false, 0, false);

    /** With what was tapped of it. */
    static WindowClock of(Tx tx, Today today, EntryAdded entry, long nowMs) {
        WindowClock clock = of(today.flightWindow(entry), nowMs);
        boolean started = today.window(entry)
                .filter(window -> StartWindow.isStarted(tx, window, nowMs))
                .isPresent();
        return new WindowClock(
                clock.label, clock.until, clock.then, clock.lastCall, clock.opensMs, clock.isThere() && started);
    }

    static WindowClock of(Optional<FlightWindow> window, long nowMs) {
        return window.map(w -> of(w, nowMs)).orElse(NONE);
    }

    private static WindowClock of(FlightWindow w, long nowMs) {
        return switch (w.at(nowMs)) {
            case AHEAD -> runs("the window opens in", w, w.opensMs(), w.opensMs(), false);
            case OPEN ->
                runs(
                        "the window closes in",
                        w,
                        w.closesMs(),
                        w.lastCallMs() > 0 ? w.lastCallAtMs() : w.closesMs(),
                        false);
            case LAST_CALL -> runs("Last call: the window closes in", w, w.closesMs(), w.closesMs(), true);
            case CLOSED -> runs("the window is closed since", w, w.closesMs(), 0, false);
        };
    }

    private static WindowClock runs(String label, FlightWindow window, long until, long then, boolean lastCall) {
        return new WindowClock(label, until, then, lastCall, window.opensMs(), false);
    }

    public boolean isThere() {
        return until > 0;
    }
}

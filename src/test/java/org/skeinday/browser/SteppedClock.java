package org.skeinday.browser;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** A wall clock that somebody sets while the program runs. */
public final class SteppedClock extends Clock {
    private final Clock real;
    private volatile Duration step = Duration.ZERO;

    public SteppedClock(Clock real) {
        this.real = real;
    }

    public void stepBy(Duration more) {
        step = step.plus(more);
    }

    @Override
    public Instant instant() {
        return real.instant().plus(step);
    }

    @Override
    public ZoneId getZone() {
        return real.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        var other = new SteppedClock(real.withZone(zone));
        other.stepBy(step);
        return other;
    }
}

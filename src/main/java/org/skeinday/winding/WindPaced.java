package org.skeinday.winding;

import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.paced}: the metronome that a practice wind was begun with.
 *
 * @param crankTurnsPerMinute 20 to 180, one beat for each: faster ones would flash more than three times in a second
 */
public record WindPaced(String windId, int crankTurnsPerMinute) {
    public static final int LEAST = 20;
    public static final int MOST = 180;

    public WindPaced {
        Preconditions.filled("The wind", windId);
        Preconditions.within("The metronome's beats per minute", crankTurnsPerMinute, LEAST, MOST);
    }

    public Beats beats() {
        return Beats.perMinute(crankTurnsPerMinute);
    }
}

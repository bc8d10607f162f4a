package org.skeinday.winding;

import org.skeinday.units.Preconditions;

/** Fact {@code wind.reader}: another device reads this wind from now on; the first one's taps still count. */
public record WindReader(String windId, String device) {
    public WindReader {
        Preconditions.filled("The wind", windId);
        Preconditions.filled("The device", device);
    }
}

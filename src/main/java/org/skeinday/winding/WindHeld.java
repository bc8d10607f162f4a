package org.skeinday.winding;

import java.util.List;
import org.skeinday.units.Preconditions;

/** Fact {@code wind.held}: what was read while a motor was held, all of it; a later one stands in its place. */
public record WindHeld(String windId, List<HeldRead> readings) {
    public WindHeld {
        Preconditions.filled("The wind", windId);
        readings = List.copyOf(readings);
    }
}

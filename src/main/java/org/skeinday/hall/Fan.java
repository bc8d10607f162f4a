package org.skeinday.hall;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * A fan, a door or a vent that moves the air.
 *
 * @param blows where to and how strongly; null when that is not known
 */
public record Fan(String name, Taped at, @Nullable Air blows) {
    public Fan {
        Preconditions.filled("The name of a fan or door", name);
    }
}

package org.skeinday.dayplan;

import org.skeinday.units.Preconditions;

/**
 * Places or things of which some are in use at a time: winding stations, lanes, timekeepers.
 *
 * @param capacity 0 to 1,000,000
 */
public record Resource(String id, long capacity) {
    public Resource {
        Preconditions.named("A resource", id);
        Preconditions.within("The capacity of " + id, capacity, 0, 1_000_000);
    }
}

package org.skeinday.hall;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/** A winding place with the distances that are kept in its hall. */
public record Judged(PlaceMeasured place, Separation least) {
    public Verdict verdict(@Nullable Length longestStretch) {
        return least.judge(place.place(), longestStretch);
    }
}

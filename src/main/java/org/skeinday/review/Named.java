package org.skeinday.review;

import org.skeinday.units.Preconditions;

/**
 * A thing of the record and what people call it.
 *
 * @param id never empty: a thing that is not known is null, not empty
 * @param name the tag of a motor, the name of a model, and so on
 */
public record Named(String id, String name) {
    public Named {
        Preconditions.filled("The id", id);
        Preconditions.filled("The name of " + id, name);
    }
}

package org.skeinday.review;

/**
 * A thing of the record and what people call it.
 *
 * @param id never empty: a thing that is not known is null, not empty
 * @param name the tag of a motor, the name of a model, and so on
 */
public record Named(String id, String name) {
    public Named {
        Check.filled("The id", id);
        Check.filled("The name of " + id, name);
    }
}

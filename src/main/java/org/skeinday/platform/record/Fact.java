package org.skeinday.platform.record;

/**
 * Something that was decided, as it is written into the journal.
 *
 * @param kind for example {@code attempt.called}
 * @param v version of the body's form, from 1
 * @param body a record of JDK types only, with the unit in each name
 */
public record Fact(String kind, int v, Object body) {
    public static Fact of(String kind, Object body) {
        return new Fact(kind, 1, body);
    }
}

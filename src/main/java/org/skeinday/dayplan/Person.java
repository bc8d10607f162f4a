package org.skeinday.dayplan;

import java.util.Collections;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.skeinday.units.Preconditions;

/**
 * Somebody who does one task at a time.
 *
 * @param clearances what this person may do
 */
public record Person(String id, SortedSet<String> clearances) {
    public Person {
        Preconditions.named("A person", id);
        clearances = Collections.unmodifiableSortedSet(new TreeSet<>(clearances));
    }

    public static Person cleared(String id, Set<String> clearances) {
        return new Person(id, new TreeSet<>(clearances));
    }
}

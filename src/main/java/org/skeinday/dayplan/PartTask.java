package org.skeinday.dayplan;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;

/**
 * What a task of a plan is about, as its name in the record says: {@code Curlew 2 run back}.
 *
 * @param attempt its entry and number; the whole name for a task that is no part of an attempt
 * @param part null for such a task: an absence, a repair, a retrieval
 */
public record PartTask(String attempt, @Nullable Part part) {
    static PartTask of(String entry, int number, Part part) {
        return new PartTask(entry + " " + number, part);
    }

    public static PartTask parse(String name) {
        String small = name.toLowerCase(Locale.ROOT);
        for (Part part : Part.values()) {
            String end = ending(part);
            if (small.endsWith(end)) {
                return new PartTask(name.substring(0, name.length() - end.length()), part);
            }
        }
        return new PartTask(name, null);
    }

    private static String ending(Part part) {
        return " " + part.word();
    }

    /** The name that {@link #parse} reads. */
    @Override
    public String toString() {
        return part == null ? attempt : attempt + ending(part);
    }
}

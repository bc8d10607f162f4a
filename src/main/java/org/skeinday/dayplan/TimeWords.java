package org.skeinday.dayplan;

import java.util.Collection;
import java.util.List;
import java.util.function.LongFunction;

/**
 * How a plan's times read to people.
 *
 * @param clock a time, for example 14:05
 * @param span how long, for example 8 min
 */
public record TimeWords(LongFunction<String> clock, LongFunction<String> span) {
    /** The numbers as they are. */
    public static final TimeWords NUMBERS = new TimeWords(Long::toString, Long::toString);

    String at(long time) {
        return clock.apply(time);
    }

    String lasting(long time) {
        return span.apply(time);
    }

    /** Names in a row, those after the first few counted. */
    static String some(Collection<String> names, int most) {
        List<String> first = names.stream().limit(most).toList();
        int more = names.size() - first.size();
        return String.join(", ", first) + (more == 0 ? "" : " and " + more + " more");
    }
}

package org.skeinday.dayplan;

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
}

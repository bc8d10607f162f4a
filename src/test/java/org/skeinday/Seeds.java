package org.skeinday;

import java.util.stream.LongStream;

/** Whole days that are played by chance, each some seconds long: a few in every run, many under {@code -Pbench}. */
public final class Seeds {
    private static final int DAYS = Integer.getInteger("skeinday.days", 3);

    private Seeds() {}

    /** A seed for each of {@code -Dskeinday.days}; three when it is not said. */
    public static LongStream several() {
        return LongStream.rangeClosed(11, 10 + DAYS);
    }
}

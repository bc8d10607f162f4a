package org.skeinday.bench.web;

import java.time.ZoneId;
import java.util.Locale;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.motor.ClockJump;

/** Times as the Bench says them. */
final class BenchWords {
    private BenchWords() {}

    /** 5 min, or 2:30 min. */
    static String minutes(int seconds) {
        return typed(seconds) + " min";
    }

    /** As the form takes it back. */
    static String typed(int seconds) {
        return seconds % 60 == 0
                ? String.valueOf(seconds / 60)
                : String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
    }

    static String jump(ClockJump jump, ZoneId zone) {
        long s = jump.byMs() / 1000;
        String by = s >= 3600
                ? String.format(Locale.ROOT, "%d:%02d:%02d h", s / 3600, s / 60 % 60, s % 60)
                : String.format(Locale.ROOT, "%d:%02d min", s / 60, s % 60);
        return "The laptop's clock went " + by + " ahead at " + PageWords.clock(jump.atMs(), zone)
                + ": did the laptop sleep, or was its clock set?";
    }
}

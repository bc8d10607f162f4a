package org.skeinday.load;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Deeds each of which is due at its own moment, whether the one before has been answered or not. */
final class Due {
    private static final int HANDS = 16;
    private static final long BREATH_NS = 400_000_000; // until what came before has been seen

    private Due() {}

    /** Something that is timed. */
    interface Deed {
        void run() throws Exception;
    }

    /** One of many that are timed. */
    interface NumberedDeed {
        void run(int number) throws Exception;
    }

    static void at(ScheduledExecutorService due, long when, Deed deed, Percentiles waits) {
        var unused = due.schedule(
                () -> {
                    deed.run();
                    waits.add(System.nanoTime() - when);
                    return null;
                },
                when - System.nanoTime(),
                TimeUnit.NANOSECONDS);
    }

    /** So many each second, evenly, until all are answered or a minute is over. */
    static void evenly(NumberedDeed deed, Percentiles waits, int perSecond, int seconds) throws InterruptedException {
        ScheduledExecutorService due = Executors.newScheduledThreadPool(HANDS);
        long begin = System.nanoTime() + BREATH_NS;
        for (int i = 0; i < seconds * perSecond; i++) {
            int number = i;
            at(due, begin + i * (1_000_000_000L / perSecond), () -> deed.run(number), waits);
        }
        due.shutdown();
        due.awaitTermination(seconds + 60L, TimeUnit.SECONDS);
    }
}

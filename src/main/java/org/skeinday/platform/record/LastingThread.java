package org.skeinday.platform.record;

import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;

/**
 * A thread that is started again when it has ended unasked. Its work may catch everything and still not outlive this:
 * where memory is out, a thread can be lost past every handler, since finding one may need memory as well.
 */
public final class LastingThread {
    private final String name;
    private final Runnable work;
    private Thread thread;
    private volatile int starts;

    /** @param work what it does until it returns */
    LastingThread(String name, Runnable work) {
        this.name = name;
        this.work = work;
        this.thread = new Thread(work, name);
    }

    synchronized void start() {
        thread.start();
        starts++;
    }

    /** How often it was started: another number than before says that it had ended in between. */
    int starts() {
        return starts;
    }

    /**
     * Starts it again where it has ended.
     *
     * @param first done before it goes on; what the ended one had in hand is let go here
     * @return whether it had ended
     */
    synchronized boolean revive(Runnable first) {
        if (starts == 0 || thread.isAlive()) {
            return false;
        }
        first.run();
        thread = new Thread(work, name);
        start();
        return true;
    }

    /** Waits until it ends: at most so many ms, and longer only as long as it is busy. */
    void join(long ms, BooleanSupplier busy) throws InterruptedException {
        Thread last = current();
        last.join(ms);
        while (last.isAlive() && busy.getAsBoolean()) {
            last.join(1_000);
        }
    }

    private synchronized Thread current() {
        return thread;
    }

    /** Where memory has run out, saying so may run out of it, too: who must outlive it says so, or not. */
    public static void sayOrNot(Logger log, String words, @Nullable Throwable fault) {
        try {
            log.error(words, fault);
        } catch (RuntimeException | Error e) {
            // what is not said is not worth ending for
        }
    }

    /**
     * Java finds out what the type in a <i>catch</i> is when something is first thrown there, and needs memory for that:
     * with none left, the first thing caught is lost past its handler. A class that must outlive it names its types here
     * once, as it begins.
     *
     * @param caught named by the class that catches them, since each finds them out for itself
     */
    public static void readyToCatch(Class<?>... caught) {
        for (Class<?> type : caught) {
            if (!Throwable.class.isAssignableFrom(type)) {
                throw new IllegalArgumentException(type + " cannot be thrown");
            }
        }
    }
}

package org.skeinday.platform.record;

import java.util.function.BooleanSupplier;

/**
 * A thread that is started again when it has ended unasked. Its work may catch everything and still not outlive this:
 * where memory is out, a thread can be lost past every handler, since finding and entering one needs memory as well.
 */
final class LastingThread {
    private final String name;
    private final Runnable work;
    private Thread thread;
    private volatile int starts;

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
}

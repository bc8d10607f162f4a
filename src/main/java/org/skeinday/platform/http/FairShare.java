package org.skeinday.platform.http;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.Executor;

/** Work of many on few threads, of which none has more than its share: what it asks beyond waits for itself only. */
final class FairShare {
    private final Executor threads;
    private final int share;
    private final Map<String, Place> places = new HashMap<>();

    /** What one of them has running, and what waits for that. */
    private static final class Place {
        private final Queue<Runnable> waiting = new ArrayDeque<>();
        private int running;
    }

    /** @param share as much of one runs at once, 1 or more */
    FairShare(Executor threads, int share) {
        this.threads = threads;
        this.share = share;
    }

    /** Runs it now, or when enough of what the same one has asked before is done. */
    void run(String who, Runnable work) {
        synchronized (places) {
            Place place = places.computeIfAbsent(who, key -> new Place());
            if (place.running >= share) {
                place.waiting.add(work);
                return;
            }
            place.running++;
        }
        begin(who, work);
    }

    private void begin(String who, Runnable work) {
        try {
            threads.execute(() -> {
                try {
                    work.run();
                } finally {
                    next(who);
                }
            });
        } catch (RuntimeException e) { // the threads are being stopped
            next(who);
            throw e;
        }
    }

    private void next(String who) {
        Runnable work;
        synchronized (places) {
            Place place = places.get(who);
            if (place == null) {
                return;
            }
            work = place.waiting.poll();
            if (work == null) {
                place.running--;
                if (place.running == 0) {
                    places.remove(who);
                }
                return;
            }
        }
        begin(who, work);
    }
}

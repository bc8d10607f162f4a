package org.skeinday.device.web;

import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.skeinday.platform.http.Access;

/**
 * How many new devices join. Who has the link of the wall could make devices without end, each with the rights and the
 * open pages of one: beyond {@value #FREE_OF_ONE} of one address within an hour, or {@value #FREE_OF_ALL} of all, each
 * further one waits twice as long. The laptop and who has the code of the day never wait; a device that has joined and
 * changes is no new one.
 */
final class JoinRate {
    static final int FREE_OF_ONE = 30;
    static final int FREE_OF_ALL = 200;

    private static final long HOUR_MS = 3_600_000;
    private static final long FIRST_WAIT_MS = 2_000;
    private static final int MOST_DOUBLINGS = 8;
    /** The longest that others keep one waiting, 32 s: the hall goes on joining. */
    private static final int MOST_DOUBLINGS_OF_ALL = 4;

    private static final String OVER_ALL = "*";

    private final Clock clock;
    private final Map<String, Deque<Long>> joined = new ConcurrentHashMap<>();

    JoinRate(Clock clock) {
        this.clock = clock;
    }

    /** Why no new device joins from there just now; empty when one may. @param from address of the request */
    synchronized String problem(String from, CodeGate.Opens opens) {
        if (Access.fromThisMachine(from) || opens == CodeGate.Opens.WATCHES) {
            return "";
        }
        long left = Math.max(
                leftMs(from, FREE_OF_ONE, MOST_DOUBLINGS), leftMs(OVER_ALL, FREE_OF_ALL, MOST_DOUBLINGS_OF_ALL));
        return left <= 0 ? "" : "Very many new devices have joined: wait " + (left + 999) / 1000 + " s.";
    }

    /** One has joined. */
    synchronized void count(String from) {
        if (!Access.fromThisMachine(from)) {
            joined.values().forEach(this::forgetOld);
            joined.values().removeIf(Deque::isEmpty);
            joined.computeIfAbsent(from, key -> new ArrayDeque<>()).add(clock.millis());
            joined.computeIfAbsent(OVER_ALL, key -> new ArrayDeque<>()).add(clock.millis());
        }
    }

    private long leftMs(String key, int free, int mostDoublings) {
        Deque<Long> times = joined.getOrDefault(key, new ArrayDeque<>());
        forgetOld(times);
        if (times.size() < free) {
            return 0;
        }
        return times.getLast() + (FIRST_WAIT_MS << Math.min(times.size() - free, mostDoublings)) - clock.millis();
    }

    private void forgetOld(Deque<Long> times) {
        times.removeIf(at -> clock.millis() - at >= HOUR_MS);
    }
}

package org.skeinday.device.web;

import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.skeinday.platform.http.Access;

/**
 * Slows down guessing: after 5 wrong tries each further one waits twice as long, per address and over all. The laptop has a
 * count of its own: what others guess never keeps its owner waiting.
 */
public final class PinGate {
    private static final int FREE_TRIES = 5;
    private static final long FIRST_WAIT_MS = 2_000;
    private static final int MOST_DOUBLINGS = 8;
    private static final String OVER_ALL = "*";
    private static final String LAPTOP = "laptop";
    private static final int MOST_ADDRESSES = 1_000;

    private final Pin pin;
    private final Clock clock;
    private final Map<String, Tries> tries = new ConcurrentHashMap<>();

    private record Tries(int wrong, long openAtMs) {}

    public PinGate(Pin pin, Clock clock) {
        this.pin = pin;
        this.clock = clock;
    }

    /** Empty when right, else what is wrong. @param from address of the request */
    public synchronized String problem(String from, String typed) {
        boolean here = Access.fromThisMachine(from);
        String address = here ? LAPTOP : from;
        long left = here ? leftMs(address) : Math.max(leftMs(address), leftMs(OVER_ALL));
        if (left > 0) {
            return "Too many wrong tries: wait " + (left + 999) / 1000 + " s.";
        }
        if (pin.check(typed)) {
            tries.remove(address);
            tries.remove(OVER_ALL);
            return "";
        }
        count(address, FREE_TRIES);
        if (!here) {
            count(OVER_ALL, 4 * FREE_TRIES);
        }
        return "That is not the coach's PIN.";
    }

    private long leftMs(String key) {
        return tries.getOrDefault(key, new Tries(0, 0)).openAtMs() - clock.millis();
    }

    /** An address may be anything on some networks: those whose wait is over make room. */
    private void makeRoom() {
        if (tries.size() > MOST_ADDRESSES) {
            tries.keySet().removeIf(key -> !key.equals(OVER_ALL) && leftMs(key) <= 0);
        }
    }

    private void count(String key, int free) {
        int wrong = tries.getOrDefault(key, new Tries(0, 0)).wrong() + 1;
        int doublings = Math.min(wrong - free, MOST_DOUBLINGS);
        makeRoom();
        long wait = wrong < free ? 0 : FIRST_WAIT_MS << doublings;
        tries.put(key, new Tries(wrong, clock.millis() + wait));
    }
}

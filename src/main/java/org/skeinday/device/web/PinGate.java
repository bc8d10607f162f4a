package org.skeinday.device.web;

import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Slows down guessing: after 5 wrong tries each further one waits twice as long, per address and over all. */
public final class PinGate {
    private static final int FREE_TRIES = 5;
    private static final long FIRST_WAIT_MS = 2_000;
    private static final int MOST_DOUBLINGS = 8;
    private static final String OVER_ALL = "*";

    private final Pin pin;
    private final Clock clock;
    private final Map<String, Tries> tries = new ConcurrentHashMap<>();

    private record Tries(int wrong, long openAtMs) {}

    public PinGate(Pin pin, Clock clock) {
        this.pin = pin;
        this.clock = clock;
    }

    /** Empty when right, else what is wrong. */
    public synchronized String problem(String address, String typed) {
        long left = Math.max(leftMs(address), leftMs(OVER_ALL));
        if (left > 0) {
            return "Too many wrong tries: wait " + (left + 999) / 1000 + " s.";
        }
        if (pin.check(typed)) {
            tries.remove(address);
            tries.remove(OVER_ALL);
            return "";
        }
        count(address, FREE_TRIES);
        count(OVER_ALL, 4 * FREE_TRIES);
        return "That is not the coach's PIN.";
    }

    private long leftMs(String key) {
        return tries.getOrDefault(key, new Tries(0, 0)).openAtMs() - clock.millis();
    }

    private void count(String key, int free) {
        int wrong = tries.getOrDefault(key, new Tries(0, 0)).wrong() + 1;
        int doublings = Math.min(wrong - free, MOST_DOUBLINGS);
        long wait = wrong < free ? 0 : FIRST_WAIT_MS << doublings;
        tries.put(key, new Tries(wrong, clock.millis() + wait));
    }
}

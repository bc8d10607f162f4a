package org.skeinday.device.web;

import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.skeinday.platform.http.Access;

/**
 * Slows down guessing: after 5 wrong tries each further one waits twice as long, per address and over all. The laptop has a
 * count of its own: what others guess never keeps its owner waiting. So have those who are known, by having joined or by
 * the right link: what strangers guess never keeps them waiting, nor they strangers. Made for the PIN, and used for codes too.
 */
public final class PinGate {
    private static final int FREE_TRIES = 5;
    private static final long FIRST_WAIT_MS = 2_000;
    private static final int MOST_DOUBLINGS = 8;
    private static final String OVER_ALL = "*";
    private static final String KNOWN = "known ";
    private static final String LAPTOP = "laptop";
    private static final int MOST_ADDRESSES = 1_000;

    private final Pin pin;
    private final Clock clock;
    private final String wrongWords;
    private final int mostDoublings;
    private final Map<String, Tries> tries = new ConcurrentHashMap<>();

    private record Tries(int wrong, long openAtMs) {}

    public PinGate(Pin pin, Clock clock) {
        this(pin, clock, "That is not the coach's PIN.", MOST_DOUBLINGS);
    }

    /**
     * For another secret than the PIN.
     *
     * @param wrongWords what is said to a wrong try
     * @param mostDoublings of the first wait of 2 s: 4 for 32 s at most
     */
    PinGate(Pin pin, Clock clock, String wrongWords, int mostDoublings) {
        this.pin = pin;
        this.clock = clock;
        this.wrongWords = wrongWords;
        this.mostDoublings = mostDoublings;
    }

    /** Empty when right, else what is wrong. @param from address of a stranger's request */
    public String problem(String from, String typed) {
        return problem(from, false, typed);
    }

    /** Empty when right, else what is wrong. @param known whether it comes from who has joined or brings the right link */
    public synchronized String problem(String from, boolean known, String typed) {
        long left = waitMs(from, known);
        if (left > 0) {
            return "Too many wrong tries: wait " + (left + 999) / 1000 + " s.";
        }
        if (pin.check(typed)) {
            forgive(from, known);
            return "";
        }
        count(address(from, known), FREE_TRIES);
        if (!Access.fromThisMachine(from)) {
            count(overAll(known), 4 * FREE_TRIES);
        }
        return wrongWords;
    }

    /** Whether a try from there would not even be looked at just now. */
    synchronized boolean keepsWaiting(String from, boolean known) {
        return waitMs(from, known) > 0;
    }

    /** Wrong tries are counted from none again. */
    synchronized void forgive(String from, boolean known) {
        tries.remove(address(from, known));
        tries.remove(overAll(known));
    }

    private static String address(String from, boolean known) {
        return Access.fromThisMachine(from) ? LAPTOP : known ? KNOWN + from : from;
    }

    private static String overAll(boolean known) {
        return known ? KNOWN + OVER_ALL : OVER_ALL;
    }

    private long waitMs(String from, boolean known) {
        long own = leftMs(address(from, known));
        return Access.fromThisMachine(from) ? own : Math.max(own, leftMs(overAll(known)));
    }

    private long leftMs(String key) {
        return tries.getOrDefault(key, new Tries(0, 0)).openAtMs() - clock.millis();
    }

    /** An address may be anything on some networks: those whose wait is over make room. */
    private void makeRoom() {
        if (tries.size() > MOST_ADDRESSES) {
            tries.keySet().removeIf(key -> !key.endsWith(OVER_ALL) && leftMs(key) <= 0);
        }
    }

    private void count(String key, int free) {
        int wrong = tries.getOrDefault(key, new Tries(0, 0)).wrong() + 1;
        int doublings = Math.min(wrong - free, mostDoublings);
        makeRoom();
        long wait = wrong < free ? 0 : FIRST_WAIT_MS << doublings;
        tries.put(key, new Tries(wrong, clock.millis() + wait));
    }
}

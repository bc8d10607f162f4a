package org.skeinday.platform.http;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;

/**
 * How often one device, or one address of strangers, may ask. A device's own pages ask at most a few dozen times a second,
 * an outbox that empties itself about ten times; only a program that means harm, or has gone wild, comes near this.
 */
public final class RequestRate {
    /** As many at once, then as many each second. */
    record Allowance(int burst, int perSecond) {}

    static final Allowance DEVICE = new Allowance(1_500, 150);
    /** A whole hall may scan the code behind one address. */
    static final Allowance STRANGERS = new Allowance(3_000, 150);

    private static final int MOST_KEPT = 2_000;

    private final LongSupplier nanos;
    private final Map<String, Left> left = new ConcurrentHashMap<>();

    private record Left(double requests, long atNanos) {}

    /** @param nanos a clock that only goes forward */
    public RequestRate(LongSupplier nanos) {
        this.nanos = nanos;
    }

    /** Whether one more request is served. @param who device or address */
    boolean admits(String who, Allowance allowance) {
        if (left.size() > MOST_KEPT) {
            left.values().removeIf(one -> refilled(one, allowance) >= allowance.burst());
        }
        boolean[] admitted = {false};
        left.compute(who, (key, before) -> {
            double there = before == null ? allowance.burst() : refilled(before, allowance);
            admitted[0] = there >= 1;
            return new Left(admitted[0] ? there - 1 : there, nanos.getAsLong());
        });
        return admitted[0];
    }

    private double refilled(Left before, Allowance allowance) {
        double gained = (nanos.getAsLong() - before.atNanos()) / 1e9 * allowance.perSecond();
        return Math.min(allowance.burst(), before.requests() + gained);
    }
}

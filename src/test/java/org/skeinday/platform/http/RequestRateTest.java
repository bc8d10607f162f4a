package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** How often one device may ask. */
class RequestRateTest {
    private static final RequestRate.Allowance FEW = new RequestRate.Allowance(10, 2);
    private final AtomicLong nanos = new AtomicLong();
    private final RequestRate rate = new RequestRate(nanos::get);

    private int admitted(String who, int asked) {
        int count = 0;
        for (int i = 0; i < asked; i++) {
            count += rate.admits(who, FEW) ? 1 : 0;
        }
        return count;
    }

    @Test
    void many_at_once_then_as_many_as_time_brings() {
        assertEquals(10, admitted("a", 50));
        nanos.addAndGet(1_500_000_000L);
        assertEquals(3, admitted("a", 50));
        nanos.addAndGet(3_600_000_000_000L);
        assertEquals(10, admitted("a", 50), "never more than at first");
    }

    @Test
    void one_that_asks_too_often_keeps_nobody_else_waiting() {
        admitted("a", 50);
        assertFalse(rate.admits("a", FEW));
        assertTrue(rate.admits("b", FEW));
    }

    @Test
    void who_goes_on_asking_is_served_again_all_the_same() {
        admitted("a", 10);
        int served = 0;
        for (int i = 0; i < 100; i++) { // ten seconds, ten times a second
            nanos.addAndGet(100_000_000L);
            served += rate.admits("a", FEW) ? 1 : 0;
        }
        assertEquals(20, served, 1);
    }

    /** An outbox waits at least a sixteenth of the longest wait, halved by chance; a page refreshes parts for each hint. */
    @Test
    void an_honest_device_never_comes_near() {
        Pace pace = Pace.normal();
        double outbox = 1000.0 / (pace.retryMost().toMillis() / 16.0 * 0.5);
        double parts = 1000.0 / pace.hintGather().toMillis() * 4;
        assertTrue(
                outbox + 3 * parts < RequestRate.DEVICE.perSecond(), "three pages in sight: " + (outbox + 3 * parts));
        assertTrue(10 * 40 < RequestRate.DEVICE.burst(), "ten pages loaded anew at once, 40 requests each");
    }
}

package org.skeinday.platform.live;

import java.time.Clock;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Sees when the laptop's clock and its monotonic clock come apart: it slept, or its clock was set. */
public final class ClockWatch {
    private static final Logger LOG = LoggerFactory.getLogger(ClockWatch.class);

    /** Less is the slow steering of a clock by the network. */
    static final long LEAST_JUMP_MS = 2_000;

    private final Clock wall;
    private final LongSupplier nanos;
    private final LongConsumer jumped;
    private long apartMs;

    /** @param jumped hears by how many ms the wall clock went ahead, negative when it was set back */
    public ClockWatch(Clock wall, LongSupplier nanos, LongConsumer jumped) {
        this.wall = wall;
        this.nanos = nanos;
        this.jumped = jumped;
        this.apartMs = apart();
    }

    private long apart() {
        return wall.millis() - TimeUnit.NANOSECONDS.toMillis(nanos.getAsLong());
    }

    void look() {
        long now = apart();
        long by = now - apartMs;
        if (Math.abs(by) < LEAST_JUMP_MS) {
            apartMs += by / 16; // follows the steering slowly
            return;
        }
        jumped.accept(by);
        apartMs = now; // only now: a jump that could not be kept is told again
    }

    public void every(long ms, ScheduledExecutorService executor) {
        var unused = executor.scheduleWithFixedDelay(this::keepLooking, ms, ms, TimeUnit.MILLISECONDS);
    }

    /** One look that fails, on a full disk for example, must not be the last. */
    private void keepLooking() {
        try {
            look();
        } catch (RuntimeException e) {
            LOG.warn("A jump of the clock could not be kept; looked at again soon", e);
        }
    }
}

package org.skeinday.platform.record;

import org.jspecify.annotations.Nullable;

/** When a tap was made: a phone that was off the Wi-Fi brings it late. */
public final class TapTime {
    private static final long BELIEVED_BOUND_MS = 1_000;

    private TapTime() {}

    /**
     * When a tap was made, and by how much that may be wrong.
     *
     * @param boundMs null when the device did not know the server's clock: it is the moment when the tap came in
     */
    public record Moment(long atMs, @Nullable Long boundMs) {}

    /**
     * Believed when the device knew the server's clock to a second and the moment lies between {@code notBeforeMs} and
     * now; else the moment when it came in.
     *
     * @param serverMs by the server's clock as the device knew it, epoch ms; null when it did not
     * @param boundMs by how much that may be wrong
     */
    public static Moment moment(ActContext context, @Nullable Long serverMs, @Nullable Long boundMs, long notBeforeMs) {
        long nowMs = context.now().toEpochMilli();
        if (serverMs == null || boundMs == null || boundMs < 0 || boundMs > BELIEVED_BOUND_MS) {
            return new Moment(nowMs, null);
        }
        return serverMs >= notBeforeMs - boundMs && serverMs <= nowMs + boundMs
                ? new Moment(Math.min(serverMs, nowMs), boundMs)
                : new Moment(nowMs, null);
    }

    /** The same without its bound. */
    public static long of(ActContext context, @Nullable Long serverMs, @Nullable Long boundMs, long notBeforeMs) {
        return moment(context, serverMs, boundMs, notBeforeMs).atMs();
    }
}

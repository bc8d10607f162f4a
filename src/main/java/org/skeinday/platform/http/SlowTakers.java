package org.skeinday.platform.http;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * An answer that is taken drop by drop holds a thread as long as its reader likes, since each drop starts the idle time
 * anew. Each answer has a time to be taken as a whole, by its length; how long the program makes it does not count.
 */
final class SlowTakers extends Handler.Wrapper {
    /** Slower than any network of a hall: own default. */
    static final long BYTES_PER_SECOND = 4_000;

    private final Duration grace;
    private final long bytesPerSecond;

    /** @param grace beyond what its length takes, for all of an answer together @param bytesPerSecond more than 0 */
    SlowTakers(Duration grace, long bytesPerSecond) {
        this.grace = grace;
        this.bytesPerSecond = bytesPerSecond;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        return super.handle(request, new Timed(request, response), callback);
    }

    /**
     * Its connection is closed when the answer is not taken in time, which ends whoever waits for it. Looked at now and
     * then while something of it is on its way; each look that finds it so counts as the time since the one before.
     */
    private final class Timed extends Response.Wrapper {
        private static final int LOOKS_IN_GRACE = 20;

        private final Scheduler scheduler;
        private final long lookMs = Math.max(10, grace.toMillis() / LOOKS_IN_GRACE);
        private long bytes;
        private long spentMs;
        private boolean underWay;
        private boolean lookedAt;

        Timed(Request request, Response response) {
            super(request, response);
            this.scheduler = request.getComponents().getScheduler();
        }

        @Override
        public void write(boolean last, ByteBuffer content, Callback callback) {
            begun(content == null ? 0 : content.remaining());
            super.write(last, content, Callback.from(this::taken, callback));
        }

        private synchronized void begun(int more) {
            bytes += more;
            underWay = true;
            if (!lookedAt) {
                lookedAt = true;
                lookLater();
            }
        }

        private synchronized void taken() {
            underWay = false;
        }

        private void lookLater() {
            scheduler.schedule(this::look, lookMs, TimeUnit.MILLISECONDS);
        }

        private synchronized void look() {
            if (!underWay) {
                lookedAt = false;
                return;
            }
            spentMs += lookMs;
            if (spentMs <= grace.toMillis() + bytes * 1000 / bytesPerSecond) {
                lookLater();
                return;
            }
            getRequest()
                    .getConnectionMetaData()
                    .getConnection()
                    .getEndPoint()
                    .close(new TimeoutException("The answer was not taken in time"));
        }
    }
}

package org.skeinday.platform.http;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * A body that comes in drop by drop holds a thread as long as it likes, since each drop starts the idle time anew. Each body
 * has a time to be there as a whole, from the request on; what is done with it then may take as long as it takes.
 */
final class SlowBodies extends Handler.Wrapper {
    /** Slower than any network of a hall: own default. */
    private static final long BYTES_PER_SECOND = 500;

    /** Of a body whose length nobody said; such a one is refused by its route anyway. */
    private static final long UNKNOWN_LENGTH = 64 * 1024;

    private final Duration grace;

    /** @param grace for the first byte, however small the body */
    SlowBodies(Duration grace) {
        this.grace = grace;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        long length = request.getLength() < 0 ? UNKNOWN_LENGTH : request.getLength();
        return super.handle(length == 0 ? request : new Timed(request, millis(length)), response, callback);
    }

    private long millis(long length) {
        return grace.toMillis() + length * 1000 / BYTES_PER_SECOND;
    }

    /** Its connection is closed when the body is not there in time, which ends whoever waits for it. */
    private static final class Timed extends Request.Wrapper {
        private final Scheduler.Task late;

        Timed(Request request, long millis) {
            super(request);
            late = request.getComponents()
                    .getScheduler()
                    .schedule(
                            () -> request.getConnectionMetaData()
                                    .getConnection()
                                    .getEndPoint()
                                    .close(new TimeoutException("The body took more than " + millis + " ms")),
                            millis,
                            TimeUnit.MILLISECONDS);
            Request.addCompletionListener(request, failure -> late.cancel());
        }

        @Override
        public Content.Chunk read() {
            Content.Chunk chunk = super.read();
            if (chunk != null && chunk.isLast()) {
                late.cancel();
            }
            return chunk;
        }
    }
}

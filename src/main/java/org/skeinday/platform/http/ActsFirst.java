package org.skeinday.platform.http;

import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.skeinday.platform.record.LastingThread;

/**
 * Taps and forms go first: what changes something runs at once on a thread of the server, what only reads waits in line
 * for a few threads of its own. So an entry never stands behind the hundred pages that the entry before it has called up.
 */
final class ActsFirst extends Handler.Wrapper {
    /**
     * Enough that some may wait for the database or for a slow device while the others go on; so few that a hall's rush
     * does not share the processor among a hundred.
     */
    private static final int READERS = 16;

    private static final int LEAST_READERS = 2;

    /** Of one address at once: who takes its answers slowly keeps half of the threads at most. */
    private static final int READERS_OF_ONE = READERS / 2;

    private final QueuedThreadPool readers;
    private final FairShare fair;

    /** @param idleMs a thread that has had nothing to read for this long ends */
    ActsFirst(int idleMs) {
        this.readers = new QueuedThreadPool(READERS, LEAST_READERS, idleMs);
        readers.setMaxEvictCount(READERS);
        readers.setName("read");
        readers.setReservedThreads(0);
        addBean(readers);
        LastingThread.readyToCatch(Throwable.class);
        fair = new FairShare(readers, READERS_OF_ONE);
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (!HttpMethod.GET.is(request.getMethod()) && !HttpMethod.HEAD.is(request.getMethod())) {
            return super.handle(request, response, callback);
        }
        fair.run(String.valueOf(Request.getRemoteAddr(request)), () -> read(request, response, callback));
        return true;
    }

    private void read(Request request, Response response, Callback callback) {
        try {
            if (!super.handle(request, response, callback)) {
                Response.writeError(request, response, callback, 404);
            }
        } catch (Throwable e) { // whoever waits must be answered, whatever it was
            Response.writeError(request, response, callback, e);
        }
    }
}

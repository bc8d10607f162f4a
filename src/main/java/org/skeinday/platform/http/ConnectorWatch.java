package org.skeinday.platform.http;

import java.time.Duration;
import java.util.Collection;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.IntFunction;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.io.ManagedSelector;
import org.eclipse.jetty.server.ServerConnector;
import org.skeinday.platform.record.LastingThread;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sees that connections are still heard. Where memory runs out, it may take the one thread that waits for what comes in:
 * the server then accepts everybody and answers nobody, and does so for ever. Another connector takes its place on the same
 * port; what was connected is cut, and the devices connect again.
 */
final class ConnectorWatch implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ConnectorWatch.class);

    private final org.eclipse.jetty.server.Server server;
    private final IntFunction<ServerConnector> another;
    private final Duration every;
    private final Duration patience;
    private final Thread thread = new Thread(this::watch, "connector-watch");
    private volatile boolean ended;

    /**
     * Watches from now on.
     *
     * @param another makes a connector of this server for a port, which is not started yet
     * @param every time between two looks
     * @param patience as long as a busy machine may take to hear what comes in
     */
    ConnectorWatch(
            org.eclipse.jetty.server.Server server,
            IntFunction<ServerConnector> another,
            Duration every,
            Duration patience) {
        this.server = server;
        this.another = another;
        this.every = every;
        this.patience = patience;
        LastingThread.readyToCatch(RuntimeException.class, Exception.class, Error.class, InterruptedException.class);
        thread.setDaemon(true);
        thread.start();
    }

    private void watch() {
        while (!ended) {
            try {
                Thread.sleep(every.toMillis());
                look();
            } catch (InterruptedException e) {
                return; // closed
            } catch (Exception | Error e) { // out of memory too: the next look may find some again
                LastingThread.sayOrNot(LOG, "Connections could not be looked after just now", e);
            }
        }
    }

    private void look() throws Exception {
        if (server.getConnectors()[0] instanceof ServerConnector connector
                && connector.isRunning()
                && !hears(connector)) {
            replace(connector);
            LastingThread.sayOrNot(LOG, "Connections were no longer heard; the port was opened anew", null);
        }
    }

    /** Each selector does what it is given between two looks at its connections. */
    private boolean hears(ServerConnector connector) throws InterruptedException {
        Collection<ManagedSelector> selectors = connector.getSelectorManager().getBeans(ManagedSelector.class);
        var heard = new CountDownLatch(selectors.size());
        selectors.forEach(selector -> selector.submit(of -> heard.countDown()));
        return heard.await(patience.toMillis(), TimeUnit.MILLISECONDS) || ended;
    }

    /** The old one is let go without being stopped: its stop would wait for the thread that is lost. */
    private void replace(ServerConnector old) throws Exception {
        ServerConnector next = another.apply(old.getLocalPort());
        var unused = old.shutdown(); // it ends when its connections do, which are closed next
        old.getConnectedEndPoints().forEach(EndPoint::close);
        server.unmanage(old);
        server.removeConnector(old);
        next.start();
        server.addConnector(next);
    }

    @Override
    public void close() {
        ended = true;
        thread.interrupt();
    }
}

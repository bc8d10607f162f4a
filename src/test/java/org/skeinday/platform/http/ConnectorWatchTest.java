package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.eclipse.jetty.io.ManagedSelector;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.ServerConnector;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A server whose selector no longer selects hears its connections again. */
@Timeout(60)
class ConnectorWatchTest {
    private static final Duration OFTEN = Duration.ofMillis(50);

    private final org.eclipse.jetty.server.Server server = new org.eclipse.jetty.server.Server();
    private final CountDownLatch goOn = new CountDownLatch(1);

    @BeforeEach
    void start() throws Exception {
        server.addConnector(connector(0));
        server.start();
    }

    @AfterEach
    void stop() throws Exception {
        goOn.countDown();
        server.stop();
    }

    private ServerConnector connector(int port) {
        ServerConnector connector = new ServerConnector(server);
        connector.setPort(port);
        return connector;
    }

    private ServerConnector first() {
        return (ServerConnector) server.getConnectors()[0];
    }

    private int status(int port) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/"))
                .timeout(Duration.ofSeconds(2))
                .build();
        return HttpClient.newHttpClient()
                .send(request, HttpResponse.BodyHandlers.discarding())
                .statusCode();
    }

    /** Asked again as devices do, whose requests are cut when the port is opened anew. */
    private int statusAtLast(int port) throws InterruptedException {
        while (true) { // the test has a time limit
            try {
                return status(port);
            } catch (IOException e) {
                Thread.sleep(20);
            }
        }
    }

    @Test
    void a_port_whose_connections_are_no_longer_heard_is_opened_anew() throws Exception {
        ServerConnector old = first();
        int port = old.getLocalPort();
        assertEquals(404, statusAtLast(port));
        for (ManagedSelector selector : old.getSelectorManager().getBeans(ManagedSelector.class)) {
            selector.submit(of -> awaitQuietly());
        }
        assertThrows(HttpTimeoutException.class, () -> status(port));
        try (var watch = new ConnectorWatch(server, this::connector, OFTEN, Duration.ofSeconds(1))) {
            assertEquals(404, statusAtLast(port));
            assertNotSame(old, first());
            assertEquals(1, server.getConnectors().length);
        }
    }

    @Test
    void one_that_hears_is_left_alone() throws Exception {
        Connector old = first();
        int port = first().getLocalPort();
        try (var watch = new ConnectorWatch(server, this::connector, OFTEN, Duration.ofSeconds(20))) {
            for (int i = 0; i < 20; i++) {
                assertEquals(404, statusAtLast(port));
                Thread.sleep(20);
            }
            assertSame(old, first());
        }
    }

    private void awaitQuietly() {
        try {
            goOn.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

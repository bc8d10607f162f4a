package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Who takes answers slowly keeps nobody else waiting: in a server with small buffers, so that an answer is soon held up. */
@Timeout(60)
class SlowTakersTest {
    private static final int LARGE = 60_000;
    private static final int BUFFER = 2_000;

    private final List<Socket> sockets = new ArrayList<>();
    private final Server server = new Server();
    private final ServerConnector connector = new ServerConnector(server);

    /** Answers with as many bytes as its path says, and waits until they are taken. */
    private static final class Bytes extends Handler.Abstract {
        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            int bytes = Integer.parseInt(Request.getPathInContext(request).substring(1));
            Content.Sink.write(response, true, ByteBuffer.wrap(new byte[bytes]));
            callback.succeeded();
            return true;
        }
    }

    @BeforeEach
    void start() throws Exception {
        connector.setHost("127.0.0.1");
        connector.setAcceptedSendBufferSize(BUFFER);
        connector.setIdleTimeout(120_000);
        server.addConnector(connector);
        var first = new ActsFirst(5_000);
        first.setHandler(new SlowTakers(Duration.ofMillis(500), 20_000));
        ((SlowTakers) first.getHandler()).setHandler(new Bytes());
        server.setHandler(first);
        server.start();
    }

    @AfterEach
    void stop() throws Exception {
        for (Socket socket : sockets) {
            socket.close();
        }
        server.stop();
    }

    /** From another address of this machine's loopback, where the system has it. */
    private Socket asks(String address, int bytes) throws IOException {
        var socket = new Socket();
        sockets.add(socket);
        socket.setReceiveBufferSize(BUFFER);
        try {
            socket.bind(new InetSocketAddress(InetAddress.getByName(address), 0));
            socket.connect(new InetSocketAddress("127.0.0.1", connector.getLocalPort()));
        } catch (IOException e) {
            Assumptions.abort("This system has one loopback address only");
        }
        String request = "GET /" + bytes + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";
        socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
        return socket;
    }

    @Test
    void one_address_that_takes_nothing_holds_half_of_the_readers_at_most() throws Exception {
        for (int i = 0; i < 40; i++) {
            asks("127.0.0.2", 100 * LARGE); // five minutes each, as long as the server waits
        }
        Thread.sleep(500); // until they are under way
        Socket other = asks("127.0.0.1", 10);
        other.setSoTimeout(10_000);
        String answer = new String(other.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        assertTrue(answer.startsWith("HTTP/1.1 200"), answer);
    }

    /** 400 bytes each 200 ms start the idle time anew each time; all of it would take half a minute. */
    @Test
    void an_answer_has_a_time_as_a_whole() throws Exception {
        Socket drips = asks("127.0.0.1", LARGE);
        int taken = 0;
        long begun = System.nanoTime();
        try {
            for (int got = 1; got > 0; Thread.sleep(200)) {
                got = drips.getInputStream().read(new byte[400]);
                taken += Math.max(0, got);
            }
        } catch (IOException e) { // cut in the midst
            assertTrue(taken > 0, "nothing came at all");
        }
        assertTrue(taken < LARGE, "all was given, in " + (System.nanoTime() - begun) / 1_000_000_000 + " s");
    }

    @Test
    void who_takes_an_answer_as_it_comes_has_all_of_it() throws Exception {
        int whole = asks("127.0.0.1", 100 * LARGE).getInputStream().readAllBytes().length;
        assertTrue(whole > 100 * LARGE, whole + " bytes");
    }
}

package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.Await;
import org.skeinday.house.NeedsQuiet;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Server;
import org.skeinday.platform.live.LiveHub;

/** A page that takes nothing any more holds up no other, and is dropped. */
@NeedsQuiet
@Timeout(60)
class StalledReaderFaultIT {
    private static final int OTHERS = 20;
    private static final Duration MOST = Duration.ofSeconds(5);

    /** Long names fill the stalled one's buffers soon. */
    private static final List<String> TOPICS =
            IntStream.range(0, 30).mapToObj(i -> "topic" + i + "x".repeat(180)).toList();

    private final Pace pace = Pace.normal().dividedBy(20);
    private final LiveHub hub = new LiveHub(pace, "run");
    private final List<Socket> sockets = new ArrayList<>();

    @Test
    void the_others_are_told_of_every_change_and_the_stalled_one_is_dropped() throws Exception {
        Page page = new Page(Page.precompiled(), List.of(), pace, UnaryOperator.identity());
        Server.Settings settings = new Server.Settings("127.0.0.1", 0, Set::of, () -> "ref", pace);
        try (Server server = Server.start(
                settings, token -> Optional.empty(), page, routes -> routes.get("/live", Role.VIEWER, hub.handler()))) {
            open(server.port());
            List<AtomicInteger> heard = new ArrayList<>();
            for (int i = 0; i < OTHERS; i++) {
                heard.add(listen(open(server.port())));
            }
            Await.until(MOST, () -> hub.openStreams() == OTHERS + 1);
            int changes = 0;
            long longest = 0;
            for (; hub.openStreams() > OTHERS && changes < 4_000; changes++) {
                int before = changes;
                hub.publish(Set.copyOf(TOPICS), changes + 1);
                long begun = System.nanoTime();
                Await.until(MOST, () -> heard.stream().allMatch(count -> count.get() > before));
                longest = Math.max(longest, System.nanoTime() - begun);
            }
            assertTrue(hub.openStreams() <= OTHERS, "the stalled one is still there after " + changes + " changes");
            assertTrue(
                    longest < pace.slowClient().toNanos() / 2,
                    "the others waited for the stalled one: " + Duration.ofNanos(longest));
            System.out.println("the stalled page was dropped after " + changes + " changes, the others waited at most "
                    + Duration.ofNanos(longest).toMillis() + " ms");
        } finally {
            for (Socket socket : sockets) {
                socket.close();
            }
        }
    }

    private Socket open(int port) throws IOException {
        Socket socket = new Socket();
        socket.setReceiveBufferSize(4096);
        socket.connect(new InetSocketAddress("127.0.0.1", port));
        String topics = TOPICS.stream().collect(Collectors.joining(","));
        OutputStream out = socket.getOutputStream();
        out.write(("GET /live?topics=" + topics + " HTTP/1.1\r\nHost: localhost:" + port
                        + "\r\nAccept: text/event-stream\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
        out.flush();
        sockets.add(socket);
        return socket;
    }

    private static AtomicInteger listen(Socket socket) {
        AtomicInteger hints = new AtomicInteger();
        Thread thread = new Thread(() -> {
            try (var in =
                    new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))) {
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                    if (line.equals("event: hint")) {
                        hints.incrementAndGet();
                    }
                }
            } catch (IOException e) {
                // the test has ended
            }
        });
        thread.setDaemon(true);
        thread.start();
        return hints;
    }
}

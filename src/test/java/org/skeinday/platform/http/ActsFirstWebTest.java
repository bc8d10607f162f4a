package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class ActsFirstWebTest {
    private static final int HALL = 300; // more than the server has threads

    private final CountDownLatch readable = new CountDownLatch(1);
    private final AtomicInteger reading = new AtomicInteger();
    private final AtomicInteger most = new AtomicInteger();
    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private Server server;

    @BeforeEach
    void start() {
        Pace pace = Pace.normal();
        Page page = new Page(Page.precompiled(), List.of(), pace, UnaryOperator.identity());
        Server.Settings settings = new Server.Settings("127.0.0.1", 0, Set::of, () -> "ref-1", pace);
        server = Server.start(settings, token -> Optional.empty(), page, routes -> {
            routes.get("/slow", Role.VIEWER, context -> {
                most.accumulateAndGet(reading.incrementAndGet(), Math::max);
                readable.await(20, TimeUnit.SECONDS);
                reading.decrementAndGet();
                context.result("read");
            });
            routes.post("/act", Role.VIEWER, context -> context.result("saved"));
        });
    }

    @AfterEach
    void stop() {
        server.close();
    }

    private HttpRequest.Builder request(String path) {
        String root = "http://localhost:" + server.port();
        return HttpRequest.newBuilder(URI.create(root + path))
                .timeout(Duration.ofSeconds(25))
                .header("Origin", root)
                .header("HX-Request", "true");
    }

    @Test
    void an_act_is_answered_while_a_hall_of_pages_waits_to_be_read() throws Exception {
        List<CompletableFuture<HttpResponse<String>>> pages = new ArrayList<>();
        for (int i = 0; i < HALL; i++) {
            pages.add(client.sendAsync(request("/slow").GET().build(), HttpResponse.BodyHandlers.ofString()));
        }
        while (reading.get() < 2) {
            Thread.sleep(5);
        }
        for (int i = 0; i < 20; i++) {
            HttpRequest act = request("/act")
                    .POST(HttpRequest.BodyPublishers.ofString(""))
                    .build();
            assertEquals(
                    "saved",
                    client.send(act, HttpResponse.BodyHandlers.ofString()).body());
        }
        assertFalse(pages.stream().anyMatch(CompletableFuture::isDone), "the pages still wait");
        readable.countDown();
        for (CompletableFuture<HttpResponse<String>> one : pages) {
            assertEquals("read", one.get().body());
        }
        assertFalse(most.get() > 16, most + " read at once");
    }

    @Test
    void a_fault_in_reading_is_answered_and_the_next_is_served() throws Exception {
        readable.countDown();
        HttpResponse<String> missing =
                client.send(request("/nowhere").GET().build(), HttpResponse.BodyHandlers.ofString());
        assertEquals(404, missing.statusCode());
        assertEquals(
                "read",
                client.send(request("/slow").GET().build(), HttpResponse.BodyHandlers.ofString())
                        .body());
    }
}

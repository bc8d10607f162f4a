package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;
import org.skeinday.App;
import org.skeinday.Await;
import org.skeinday.Demo;
import org.skeinday.browser.Browsers;
import org.skeinday.house.NeedsQuiet;
import org.skeinday.platform.http.Pace;

/** The laptop was away: a hall of pages comes back by itself, soon, and not all in one moment. */
@NeedsQuiet
@Timeout(120)
class ComingBackFaultIT {
    private static final int PAGES = 100;
    private static final Duration MOST = Duration.ofSeconds(30);

    @TempDir
    Path root;

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    /** When each page heard {@code resync} last, by {@link System#nanoTime}. */
    private final ConcurrentMap<Integer, Long> heard = new ConcurrentHashMap<>();

    /** Pages that have tried in vain three times, so that they wait as long as they do in a hall. */
    private final Set<Integer> missed = ConcurrentHashMap.newKeySet();

    private volatile boolean over;

    @Test
    void a_hundred_pages_are_live_within_ten_seconds_of_the_return_spread_over_two() throws Exception {
        App app = start(0);
        int port = app.port();
        List<Double> delays = delaysOfThePages(port);
        for (int i = 0; i < PAGES; i++) {
            int page = i;
            Thread thread = new Thread(() -> live(page, port, delays));
            thread.setDaemon(true);
            thread.start();
        }
        Await.until(MOST, () -> heard.size() == PAGES);
        app.close();
        heard.clear();
        Await.until(MOST, () -> missed.size() == PAGES); // away for a while, as when a laptop starts again
        try (App again = start(port)) {
            long returned = System.nanoTime();
            Await.until(MOST, () -> heard.size() == PAGES);
            var times = heard.values().stream()
                    .mapToDouble(at -> (at - returned) / 1e9)
                    .summaryStatistics();
            System.out.printf("back between %.2f and %.2f s%n", times.getMin(), times.getMax());
            assertTrue(times.getMax() <= 10, "the last was back after " + times.getMax() + " s");
            assertTrue(times.getMax() - times.getMin() >= 2, "spread over " + (times.getMax() - times.getMin()) + " s");
            over = true;
        }
    }

    private App start(int port) throws IOException {
        Path data = root.resolve("day");
        if (port == 0) {
            Demo.into(data);
        }
        return App.start(
                new App.Settings(data, port, false, Pace.normal()), Clock.systemDefaultZone(), new SecureRandom());
    }

    /** What the pages' own script would wait, at the first, second, third and fourth try, in ms. */
    @SuppressWarnings("unchecked")
    private static List<Double> delaysOfThePages(int port) {
        ChromeDriver browser = Browsers.of(Browsers.Size.LAPTOP);
        browser.get("http://localhost:" + port + "/join");
        List<Number> sampled = (List<Number>) browser.executeAsyncScript("const done = arguments[arguments.length - 1];"
                + "import('/static/js/page.js').then((p) =>"
                + " done(Array.from({length: 400}, (_, i) => p.reconnectDelay(1 + i % 4))))");
        assertEquals(400, sampled.size());
        browser.get("about:blank");
        return sampled.stream().map(Number::doubleValue).toList();
    }

    /** As the pages' stream does: connect, listen, and after an end wait and connect again. */
    private void live(int page, int port, List<Double> delays) {
        int again = 0;
        while (!over) {
            try (var lines = client.send(
                            HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/live?topics=attempts"))
                                    .header("Accept", "text/event-stream")
                                    .build(),
                            HttpResponse.BodyHandlers.ofLines())
                    .body()) {
                for (var line = lines.iterator(); line.hasNext(); ) {
                    if (line.next().equals("event: resync")) {
                        heard.put(page, System.nanoTime());
                        again = 0;
                    }
                }
            } catch (IOException | InterruptedException | java.io.UncheckedIOException e) {
                // away
            }
            again = Math.min(again + 1, 4);
            if (again >= 3) {
                missed.add(page);
            }
            pause(delays.get(page * 4 + again - 1));
        }
    }

    private static void pause(double ms) {
        try {
            Thread.sleep((long) ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

package org.skeinday.load;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;

/** A hundred phones scan the code in one moment: each joins and opens its first page. */
final class JoinStorm {
    private static final long SOON_NS = 500_000_000L;
    private static final long APART_NS = 5_000_000_000L;
    private static final long ROUND_MS = 12_000;

    private final Hall hall;
    private final Bare bare;
    private final HttpClient client;
    private final int devices;
    private final Queue<String> cookies = new ConcurrentLinkedQueue<>();

    JoinStorm(Hall hall, Bare bare, HttpClient client, int devices) {
        this.hall = hall;
        this.bare = bare;
        this.client = client;
        this.devices = devices;
    }

    void measure(LoadFigures figures) throws InterruptedException {
        Percentiles ours = new Percentiles();
        Percentiles least = new Percentiles();
        ScheduledExecutorService due = Executors.newScheduledThreadPool(devices);
        for (int round = 0; round < 2; round++) { // the first warms up
            ours.clear();
            least.clear();
            long begin = System.nanoTime() + SOON_NS;
            for (int i = 0; i < devices; i++) {
                int seed = 5_000 + 1_000 * round + i;
                Due.at(due, begin, () -> join(seed), ours);
                Due.at(due, begin + APART_NS, this::getTwice, least);
            }
            Thread.sleep(ROUND_MS);
        }
        due.shutdown();
        figures.add("100 join in one moment and see their page", "≤ 800 ms", 0.95, ours, least);
        if (ours.count() < devices) {
            figures.add("of 100 that joined", "100", String.valueOf(ours.count()));
        }
    }

    private void join(int seed) throws IOException, InterruptedException {
        String cookie = hall.join("viewer", seed);
        hall.visitor(cookie, seed).get("/");
        cookies.add(cookie);
    }

    /** Of all viewers that have joined, the warming ones too. */
    List<String> cookies() {
        return List.copyOf(cookies);
    }

    private void getTwice() throws IOException, InterruptedException {
        for (int i = 0; i < 2; i++) {
            client.send(
                    HttpRequest.newBuilder(URI.create(bare.at("/page"))).build(),
                    HttpResponse.BodyHandlers.ofByteArray());
        }
    }
}

package org.skeinday.load;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/**
 * 100 devices, 20 acts a second in all: how long until <i>Saved</i>, and until the 99 others are told, each beside the
 * bare least of the same run. Prints figures and ratios, asserts none.
 */
class LoadBenchmark {
    private static final int DEVICES = 100;
    private static final int PER_SECOND = 20;
    private static final int SECONDS = Integer.getInteger("skeinday.load.seconds", 30);

    @TempDir
    Path root;

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final AtomicLong durations = new AtomicLong(1);

    @Test
    void saved_and_told_beside_the_bare_least() throws Exception {
        try (Hall hall = new Hall(root.resolve("day"), DEVICES);
                BareServer bare = new BareServer(root.resolve("bare"))) {
            byte[] line = lastLine();
            saved(hall, bare, line, 5); // to warm up
            Percentiles[] saved = saved(hall, bare, line, SECONDS);
            System.out.println("Saved, forced to disk   " + saved[0].text());
            System.out.println("bare append and force   " + saved[1].text());
            System.out.println("ratio                   " + saved[0].over(saved[1]));
            Percentiles[] told = told(hall, bare);
            System.out.println("change to 99 streams    " + told[0].text() + ", of which 100 ms gather hints");
            System.out.println("bare stream             " + told[1].text());
            System.out.println("ratio                   " + told[0].over(told[1]));
        }
    }

    private byte[] lastLine() throws IOException {
        List<String> lines = Files.readAllLines(root.resolve("day/journal.jsonl"));
        return (lines.get(lines.size() - 1) + "\n").getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    /** Each with ids of its own. */
    private Visitor laptop(Hall hall) {
        return new Visitor(hall.port(), "", durations.get() + 10);
    }

    /** Ours and the bare one in turns, each due at its own moment whether the one before has been answered or not. */
    private Percentiles[] saved(Hall hall, BareServer bare, byte[] line, int seconds) throws InterruptedException {
        Percentiles[] waits = {new Percentiles(), new Percentiles()};
        Visitor laptop = laptop(hall);
        ScheduledExecutorService due = Executors.newScheduledThreadPool(16);
        long begin = System.nanoTime() + 200_000_000;
        long every = 1_000_000_000L / PER_SECOND;
        for (int i = 0; i < seconds * PER_SECOND; i++) {
            long ours = begin + i * every;
            at(due, ours, () -> post(hall, laptop), waits[0]);
            at(due, ours + every / 2, () -> post(bare.port(), "/append", line), waits[1]);
        }
        due.shutdown();
        due.awaitTermination(seconds + 60L, TimeUnit.SECONDS);
        if (waits[0].count() < seconds * PER_SECOND || waits[1].count() < seconds * PER_SECOND) {
            throw new IllegalStateException("Some were not answered: " + waits[0].text() + ", " + waits[1].text());
        }
        return waits;
    }

    private interface Deed {
        void run() throws Exception;
    }

    private static void at(ScheduledExecutorService due, long when, Deed deed, Percentiles waits) {
        due.schedule(
                () -> {
                    deed.run();
                    waits.add(System.nanoTime() - when);
                    return null;
                },
                when - System.nanoTime(),
                TimeUnit.NANOSECONDS);
    }

    private void post(Hall hall, Visitor laptop) throws IOException, InterruptedException {
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("attempt", hall.attempt()).put("slot", 1).put("ms", durations.getAndIncrement());
        var answers =
                laptop.taps(Json.MAPPER.createArrayNode().add(Visitor.tap(laptop.newId(), "watch.landing", content)));
        if (!answers.path(0).path("state").asText().equals("saved")) {
            throw new IOException(answers.toString());
        }
    }

    private void post(int port, String path, byte[] body) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                .build();
        client.send(request, HttpResponse.BodyHandlers.discarding());
    }

    private Percentiles[] told(Hall hall, BareServer bare) throws Exception {
        Percentiles[] waits = {new Percentiles(), new Percentiles()};
        Visitor laptop = laptop(hall);
        try (Listeners ours = new Listeners(client, DEVICES - 1);
                Listeners least = new Listeners(client, DEVICES - 1)) {
            for (int i = 0; i < DEVICES - 1; i++) {
                ours.listen("http://localhost:" + hall.port() + "/live?topics=attempts", hall.cookie(i));
                least.listen("http://127.0.0.1:" + bare.port() + "/stream", "");
            }
            ours.awaitOpen();
            least.awaitOpen();
            for (int i = 0; i < 40; i++) {
                ours.measure(() -> post(hall, laptop), waits[0]);
                least.measure(() -> post(bare.port(), "/tell", new byte[0]), waits[1]);
            }
        }
        return waits;
    }

    /** Streams that are read line by line. */
    private static final class Listeners implements AutoCloseable {
        private final HttpClient client;
        private final int count;
        private final ConcurrentHashMap<Integer, Thread> open = new ConcurrentHashMap<>();
        private final AtomicLong resyncs = new AtomicLong();
        private final AtomicLong hints = new AtomicLong();
        private volatile long began;
        private volatile Percentiles into = new Percentiles();

        Listeners(HttpClient client, int count) {
            this.client = client;
            this.count = count;
        }

        void listen(String address, String cookie) {
            HttpRequest.Builder request =
                    HttpRequest.newBuilder(URI.create(address)).header("Accept", "text/event-stream");
            if (!cookie.isEmpty()) {
                request.header("Cookie", cookie);
            }
            Thread thread = new Thread(() -> read(request.build()), "listener");
            thread.setDaemon(true);
            open.put(open.size(), thread);
            thread.start();
        }

        private void read(HttpRequest request) {
            try (var lines =
                    client.send(request, HttpResponse.BodyHandlers.ofLines()).body()) {
                lines.forEach(this::heard);
            } catch (IOException | InterruptedException | java.io.UncheckedIOException e) {
                // the server or the test ended
            }
        }

        private void heard(String line) {
            if (line.equals("event: resync")) {
                resyncs.incrementAndGet();
            } else if (line.equals("event: hint")) {
                into.add(System.nanoTime() - began);
                hints.incrementAndGet();
            }
        }

        void awaitOpen() throws InterruptedException {
            await(resyncs);
        }

        void measure(Deed deed, Percentiles waits) throws Exception {
            hints.set(0);
            into = waits;
            began = System.nanoTime();
            deed.run();
            await(hints);
            Thread.sleep(150);
        }

        private void await(AtomicLong counted) throws InterruptedException {
            for (int i = 0; i < 10_000 && counted.get() < count; i++) {
                Thread.sleep(1);
            }
            if (counted.get() < count) {
                throw new IllegalStateException(counted.get() + " of " + count + " streams heard in 10 s");
            }
        }

        @Override
        public void close() {
            open.values().forEach(Thread::interrupt);
        }
    }
}

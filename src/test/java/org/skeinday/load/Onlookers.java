package org.skeinday.load;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/** Devices that hold a stream and fetch their part again when told, as pages do: when each was told, when it saw. */
final class Onlookers implements AutoCloseable {
    private final HttpClient client;
    private final List<Thread> open = new ArrayList<>();
    private final List<Future<?>> ended = new ArrayList<>();
    private final AtomicLong resyncs = new AtomicLong();
    private final Percentiles told = new Percentiles();
    private final Percentiles seen = new Percentiles();
    private final Set<Thread> toldOf = ConcurrentHashMap.newKeySet(); // each of a change once
    private final Set<Thread> seenBy = ConcurrentHashMap.newKeySet();
    private final Queue<Stream<String>> reading = new ConcurrentLinkedQueue<>();
    private final AtomicLong drops = new AtomicLong();
    private final AtomicLong failures = new AtomicLong();
    private volatile boolean closed;
    private volatile long began;
    private volatile String sought = "nothing yet";
    private volatile CountDownLatch toSee = new CountDownLatch(0);

    Onlookers(HttpClient client) {
        this.client = client;
    }

    void add(String stream, String part, String cookie) {
        HttpRequest.Builder request = request(stream, cookie).header("Accept", "text/event-stream");
        begin(read(request.build(), part, cookie, () -> false));
    }

    /** One that walks out of the Wi-Fi now and then, on average after {@code meanMs}, and comes back as pages do. */
    void addRestless(String stream, String part, String cookie, long meanMs, SplittableRandom random) {
        HttpRequest request =
                request(stream, cookie).header("Accept", "text/event-stream").build();
        begin(() -> {
            while (!closed) {
                long until = System.nanoTime() + (long) (-Math.log(1 - random.nextDouble()) * meanMs * 1e6);
                read(request, part, cookie, () -> System.nanoTime() > until).call();
                drops.incrementAndGet();
                Thread.sleep(random.nextLong(300, 1_500));
            }
            return null;
        });
    }

    private void begin(Callable<Void> way) {
        var reading = new FutureTask<>(way);
        Thread thread = new Thread(reading, "onlooker");
        thread.setDaemon(true);
        open.add(thread);
        ended.add(reading);
        thread.start();
    }

    private static HttpRequest.Builder request(String address, String cookie) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address));
        return cookie.isEmpty() ? request : request.header("Cookie", cookie);
    }

    private Callable<Void> read(HttpRequest stream, String part, String cookie, BooleanSupplier leaves) {
        return () -> {
            try (var lines =
                    client.send(stream, HttpResponse.BodyHandlers.ofLines()).body()) {
                reading.add(lines);
                for (var line = lines.iterator(); !leaves.getAsBoolean() && line.hasNext(); ) {
                    heard(line.next(), part, cookie);
                }
            } catch (UncheckedIOException e) {
                // the server ended
            } catch (IOException e) {
                failures.incrementAndGet();
            }
            return null;
        };
    }

    private void heard(String line, String part, String cookie) throws IOException, InterruptedException {
        if (line.equals("event: resync")) {
            resyncs.incrementAndGet();
        } else if (line.equals("event: hint")) {
            if (toldOf.add(Thread.currentThread())) {
                told.add(System.nanoTime() - began);
            }
            HttpRequest again =
                    request(part, cookie).header("HX-Request", "true").build();
            HttpResponse<byte[]> answer = client.send(again, HttpResponse.BodyHandlers.ofByteArray());
            if (answer.statusCode() != 200) {
                throw new IOException("part: " + answer.statusCode());
            }
            if (new String(answer.body(), StandardCharsets.UTF_8).contains(sought)
                    && seenBy.add(Thread.currentThread())) {
                seen.add(System.nanoTime() - began);
                toSee.countDown();
            }
        }
    }

    void awaitOpen() throws InterruptedException {
        for (int i = 0; i < 10_000 && resyncs.get() < open.size(); i++) {
            Thread.sleep(1);
        }
        if (resyncs.get() < open.size()) {
            throw new IllegalStateException(resyncs.get() + " of " + open.size() + " streams are open after 10 s");
        }
    }

    /** One change, until every onlooker has seen these words; then long enough for the next to be gathered by itself. */
    void measure(String words, Due.Deed change) throws Exception {
        sought = words;
        toSee = new CountDownLatch(open.size());
        began = System.nanoTime();
        toldOf.clear();
        seenBy.clear();
        change.run();
        if (!toSee.await(10, TimeUnit.SECONDS)) {
            throw new IllegalStateException(toSee.getCount() + " have not seen it after 10 s" + problems());
        }
        Thread.sleep(150);
    }

    private String problems() throws InterruptedException {
        for (Future<?> one : ended) {
            try {
                if (one.isDone()) {
                    one.get();
                }
            } catch (ExecutionException e) {
                return ": " + e.getCause();
            }
        }
        return "";
    }

    long drops() {
        return drops.get();
    }

    /** Requests that failed. */
    long failures() {
        return failures.get();
    }

    /** What was heard before counts for nothing. */
    void forget() {
        told.clear();
        seen.clear();
    }

    Percentiles told() {
        return told;
    }

    Percentiles seen() {
        return seen;
    }

    @Override
    public void close() {
        closed = true;
        reading.forEach(Stream::close); // an interrupt ends no reading of lines
        open.forEach(Thread::interrupt);
    }
}

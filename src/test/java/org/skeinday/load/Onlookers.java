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
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

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
    private volatile long began;
    private volatile String sought = "nothing yet";
    private volatile CountDownLatch toSee = new CountDownLatch(0);

    Onlookers(HttpClient client) {
        this.client = client;
    }

    void add(String stream, String part, String cookie) {
        HttpRequest.Builder request = request(stream, cookie).header("Accept", "text/event-stream");
        var reading = new FutureTask<>(read(request.build(), part, cookie));
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

    private Callable<Void> read(HttpRequest stream, String part, String cookie) {
        return () -> {
            try (var lines =
                    client.send(stream, HttpResponse.BodyHandlers.ofLines()).body()) {
                for (var line = lines.iterator(); line.hasNext(); ) {
                    heard(line.next(), part, cookie);
                }
            } catch (UncheckedIOException e) {
                // the server ended
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
    void measure(String words, LoadBenchmark.Deed change) throws Exception {
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
        open.forEach(Thread::interrupt);
    }
}

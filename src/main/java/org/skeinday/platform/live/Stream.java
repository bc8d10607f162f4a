package org.skeinday.platform.live;

import io.javalin.http.sse.SseClient;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/** One reader: hints gathered for a moment, a comment when nothing happens. */
final class Stream implements Runnable {
    private final SseClient client;
    private final Set<String> topics;
    private final Pace pace;
    private final Consumer<Stream> ended;
    private final Set<String> waiting = new HashSet<>();
    private long n;
    private boolean closed;

    Stream(SseClient client, Set<String> topics, Pace pace, Consumer<Stream> ended) {
        this.client = client;
        this.topics = topics;
        this.pace = pace;
        this.ended = ended;
    }

    synchronized void offer(Set<String> changed, long at) {
        boolean any = false;
        for (String topic : changed) {
            any |= topics.contains(topic) && waiting.add(topic);
        }
        n = Math.max(n, at);
        if (any) {
            notifyAll();
        }
    }

    synchronized void close() {
        closed = true;
        notifyAll();
    }

    @Override
    public void run() {
        try {
            client.sendEvent("resync", "{}");
            while (!over()) {
                String hint = next();
                if (hint.isEmpty()) {
                    client.sendComment("here");
                } else {
                    client.sendEvent("hint", hint);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            ended.accept(this);
            client.close();
        }
    }

    private synchronized boolean over() {
        return closed || client.terminated();
    }

    /** The next hint, or empty when it is time for a comment. */
    private synchronized String next() throws InterruptedException {
        if (waiting.isEmpty() && !closed) {
            wait(Math.max(1, pace.heartbeatMs()));
        }
        if (waiting.isEmpty() || closed) {
            return "";
        }
        wait(Math.max(1, pace.hintGatherMs()));
        String hint = "{\"topics\":[\"" + String.join("\",\"", new TreeSet<>(waiting)) + "\"],\"n\":" + n + "}";
        waiting.clear();
        return hint;
    }
}

package org.skeinday.platform.live;

import io.javalin.http.sse.SseClient;
import java.util.Arrays;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/** The open streams. Publishing never waits for a reader: each stream has its own thread and a set of topics. */
public final class LiveHub implements AutoCloseable {
    private static final int CAP = 200;
    private static final int SMALL_STACK = 128 * 1024;

    private final Set<Stream> streams = ConcurrentHashMap.newKeySet();
    private final Pace pace;

    public LiveHub(Pace pace) {
        this.pace = pace;
    }

    public void publish(Set<String> topics, long n) {
        streams.forEach(stream -> stream.offer(topics, n));
    }

    public int open() {
        return streams.size();
    }

    /** Takes a reader; one who may not listen, or finds no place, is told so. Never an error status: it would end his stream for good. */
    public void join(SseClient client, boolean mayListen) {
        if (!mayListen || streams.size() >= CAP) {
            client.sendEvent(mayListen ? "full" : "ended", "{}");
            client.close();
            return;
        }
        String asked = client.ctx().queryParam("topics");
        Set<String> topics = Arrays.stream((asked == null ? "" : asked).split(","))
                .filter(topic -> topic.matches("[a-z-]{1,40}"))
                .limit(16)
                .collect(Collectors.toUnmodifiableSet());
        client.keepAlive();
        var stream = new Stream(client, topics, pace, streams::remove);
        streams.add(stream);
        client.onClose(stream::close);
        new Thread(null, stream, "stream", SMALL_STACK).start();
    }

    @Override
    public void close() {
        streams.forEach(Stream::close);
    }
}

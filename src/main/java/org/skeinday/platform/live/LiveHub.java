package org.skeinday.platform.live;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.sse.SseClient;
import io.javalin.http.sse.SseHandler;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.RecordMoment;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.record.Json;

/** Tells open pages which topics changed. Carries no data: each page asks again with its own rights. */
public final class LiveHub implements AutoCloseable {
    /** Streams open at once. */
    public static final int MOST_STREAMS = 200;

    /** Streams of one tablet: ten tabs are usable, and none takes the whole house. */
    public static final int MOST_OF_ONE = 20;

    /** Topic of the list of devices, which shows who is connected. */
    private static final Set<String> DEVICES = Set.of("devices");

    /** A browser passes an event without data over in silence. */
    private static final String NOTHING = "{}";

    private static final int STACK_BYTES = 256 * 1024;
    private final Pace pace;
    private final Map<PendingTopics, Owner> open = new ConcurrentHashMap<>();
    private final AtomicInteger streams = new AtomicInteger();
    private final String run;
    private final AtomicLong last = new AtomicLong();
    private volatile boolean closed;

    /** Whose a stream is. */
    record Owner(String device, StreamPlaces.Kind kind) {
        static Owner of(Caller caller) {
            boolean kept = caller.isLaptop() || caller.role().covers(Role.TIMEKEEPER);
            return new Owner(
                    caller.device(),
                    kept
                            ? StreamPlaces.Kind.KEPT
                            : caller.isSpectator() ? StreamPlaces.Kind.SPECTATOR : StreamPlaces.Kind.CREW);
        }
    }

    /** @param run differs at each start of the program */
    public LiveHub(Pace pace, String run) {
        this.pace = pace;
        this.run = run;
        text(new PendingTopics.Hint(Set.of(), 0)); // a stream's stack is too small to load the JSON library on
    }

    /** Which moment of the record a page shows that is made now: one that still has it when it connects is fresh. */
    public RecordMoment moment() {
        return new RecordMoment(run, last.get());
    }

    /** To be called after the commit, so that nobody asks too early. @param n of the last act that is visible */
    public void publish(Set<String> topics, long n) {
        last.accumulateAndGet(n, Math::max);
        open.keySet().forEach(hints -> hints.offer(topics, n));
    }

    /** Ends the streams of a device whose rights ended or changed. */
    public void endStreamsOf(String device) {
        open.forEach((hints, owner) -> {
            if (owner.device().equals(device)) {
                hints.close();
            }
        });
    }

    /** Whether a device has a page open and in sight. */
    public boolean isConnected(String device) {
        return open.values().stream().anyMatch(owner -> owner.device().equals(device));
    }

    public int openStreams() {
        return streams.get();
    }

    /** Tells every stream to end: the pages come back by themselves. */
    @Override
    public void close() {
        closed = true;
        open.keySet().forEach(PendingTopics::close);
    }

    /** What serves a stream. */
    public Handler handler() {
        return new SseHandler(this::serve);
    }

    /** Serves {@code /live?topics=a,b}. A full house is said in an event: one 5xx would end the page's stream for good. */
    void serve(SseClient client) {
        PendingTopics hints = new PendingTopics(topicsOf(client.ctx()));
        if (closed || !takePlace(hints, Owner.of(Access.callerOf(client.ctx())))) {
            client.sendEvent("full", NOTHING);
            client.close();
            return;
        }
        streams.incrementAndGet();
        publish(DEVICES, 0);
        client.keepAlive();
        client.onClose(hints::close);
        Thread thread = new Thread(null, () -> run(client, hints), "live", STACK_BYTES);
        thread.setDaemon(true);
        thread.start();
    }

    /** Where another gives a place up for it, that one's page comes back by itself and finds the house full. */
    private synchronized boolean takePlace(PendingTopics hints, Owner owner) {
        StreamPlaces.Answer answer = StreamPlaces.ask(owner.device(), owner.kind(), this::openByDevice);
        answer.gives().ifPresent(this::closeOneOf);
        if (answer.admitted()) {
            open.put(hints, owner);
        }
        return answer.admitted();
    }

    private Map<String, Long> openByDevice(StreamPlaces.Kind kind) {
        return open.entrySet().stream()
                .filter(one -> one.getValue().kind() == kind && !one.getKey().isClosed())
                .collect(Collectors.groupingBy(one -> one.getValue().device(), Collectors.counting()));
    }

    private void closeOneOf(String device) {
        open.entrySet().stream()
                .filter(one ->
                        one.getValue().device().equals(device) && !one.getKey().isClosed())
                .findFirst()
                .ifPresent(one -> one.getKey().close());
    }

    private void run(SseClient client, PendingTopics hints) {
        try {
            client.sendEvent("resync", "{\"moment\":\"" + moment().words() + "\"}"); // hexadecimal digits and a number
            while (!hints.isClosed() && !client.terminated()) {
                tell(client, hints.take(pace.heartbeat(), pace.hintGather()));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            open.remove(hints);
            streams.decrementAndGet();
            client.close();
            publish(DEVICES, 0);
        }
    }

    private static String text(PendingTopics.Hint hint) {
        return Json.MAPPER.valueToTree(hint).toString();
    }

    private static void tell(SseClient client, PendingTopics.Hint hint) {
        if (hint.topics().isEmpty()) {
            client.sendEvent("here", NOTHING); // a comment would never reach the page's watchdog
        } else {
            client.sendEvent("hint", text(hint));
        }
    }

    private static Set<String> topicsOf(Context context) {
        String asked = context.queryParam("topics");
        return asked == null
                ? Set.of()
                : Arrays.stream(asked.split(","))
                        .filter(topic -> !topic.isBlank())
                        .limit(32)
                        .collect(Collectors.toCollection(TreeSet::new));
    }
}

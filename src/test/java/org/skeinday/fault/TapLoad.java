package org.skeinday.fault;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/** Clients that send landings as fast as they are answered, and remember what they were told. */
final class TapLoad {
    private static final int CLIENTS = 4;

    private final int port;
    private final String attempt;
    private final AtomicLong durations = new AtomicLong(1);

    /** Tap id to the record's number it was answered with. */
    final Map<String, Long> saved = new ConcurrentHashMap<>();

    /** Every tap that was ever sent, by id. */
    final Map<String, ObjectNode> sent = new ConcurrentHashMap<>();

    private final List<Thread> running = new ArrayList<>();
    private final List<String> surprises = new ArrayList<>();
    private volatile boolean stop;

    TapLoad(int port, String attempt) {
        this.port = port;
        this.attempt = attempt;
    }

    void begin(long seed) {
        stop = false;
        for (int i = 0; i < CLIENTS; i++) {
            Visitor client = new Visitor(port, "", seed * 31 + i);
            Thread thread = new Thread(() -> run(client), "client-" + i);
            running.add(thread);
            thread.start();
        }
    }

    void end() throws InterruptedException {
        stop = true;
        for (Thread thread : running) {
            thread.join();
        }
        running.clear();
    }

    List<String> surprises() {
        synchronized (surprises) {
            return List.copyOf(surprises);
        }
    }

    private void run(Visitor client) {
        while (!stop) {
            ArrayNode taps = Json.MAPPER.createArrayNode();
            for (int i = 0; i < 3; i++) {
                ObjectNode tap = landing(client.newId());
                sent.put(tap.path("id").asText(), tap);
                taps.add(tap);
            }
            try {
                send(client, taps);
            } catch (IOException e) {
                return; // the server was killed; what is not known is asked for after the restart
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    /** Sends taps, new or again, and checks that one which was saved keeps its number. */
    void send(Visitor client, ArrayNode taps) throws IOException, InterruptedException {
        for (JsonNode answer : client.taps(taps)) {
            String id = answer.path("id").asText();
            if (!answer.path("state").asText().equals("saved")) {
                note(answer.toString());
                continue;
            }
            long n = answer.path("n").asLong();
            Long before = saved.put(id, n);
            if (before != null && before != n) {
                note(id + " was saved as " + before + " and is answered as " + n);
            }
        }
    }

    private void note(String surprise) {
        synchronized (surprises) {
            surprises.add(surprise);
        }
    }

    private ObjectNode landing(String id) {
        ObjectNode content = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", 1)
                .put("ms", durations.getAndIncrement());
        return Visitor.tap(id, "watch.landing", content);
    }
}

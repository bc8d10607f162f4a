package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.browser.Browsers;
import org.skeinday.platform.record.Json;

/** Three of ten requests and three of ten answers are lost: the server holds exactly what was tapped. */
@Timeout(120)
class LostAnswersFaultIT {
    private static final long SEED = Long.getLong("skeinday.seed", 20_261_125L);
    private static final int CLIENTS = 20;
    private static final int BATCHES = 5;

    @TempDir
    Path root;

    @Test
    void twenty_clients_that_repeat_until_answered_count_each_tap_once() throws Exception {
        try (App app = Demo.start(root.resolve("day"));
                LossyProxy wifi = new LossyProxy(app.port(), 0.3, SEED)) {
            String attempt = CalledForTests.call(new Visitor(app.port(), "", 1));
            Set<String> sent = ConcurrentHashMap.newKeySet();
            List<Thread> clients = new ArrayList<>();
            for (int c = 0; c < CLIENTS; c++) {
                Visitor client = new Visitor(wifi.port(), "", SEED + 100 + c);
                Thread thread = new Thread(() -> tapUntilSaved(client, attempt, sent));
                clients.add(thread);
                thread.start();
            }
            for (Thread client : clients) {
                client.join();
            }
            assertEquals(CLIENTS * BATCHES * 3, sent.size());
            assertEquals(new TreeSet<>(sent), landings(), "seed " + SEED);
            assertTrue(wifi.answersLost.get() > 10 && wifi.requestsLost.get() > 10, "the Wi-Fi was bad");
        }
    }

    private static void tapUntilSaved(Visitor client, String attempt, Set<String> sent) {
        for (int b = 0; b < BATCHES; b++) {
            ArrayNode taps = Json.MAPPER.createArrayNode();
            for (int i = 0; i < 3; i++) {
                ObjectNode content = Json.MAPPER.createObjectNode();
                content.put("attempt", attempt).put("slot", 1).put("ms", 1000 + i);
                String id = client.newId();
                sent.add(id);
                taps.add(Visitor.tap(id, "watch.landing", content));
            }
            while (!saved(client, taps)) {
                Thread.onSpinWait();
            }
        }
    }

    private static boolean saved(Visitor client, ArrayNode taps) {
        try {
            for (JsonNode answer : client.taps(taps)) {
                assertEquals("saved", answer.path("state").asText(), answer.toString());
            }
            return true;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Ids of acts with a reading in the journal; fails when one stands twice. */
    private Set<String> landings() throws IOException {
        Map<String, Integer> found = new HashMap<>();
        for (String line : Files.readAllLines(root.resolve("day/journal.jsonl"))) {
            if (line.contains("attempt.reading")) {
                found.merge(Json.MAPPER.readTree(line).path("act").asText(), 1, Integer::sum);
            }
        }
        found.forEach((id, times) -> assertEquals(1, times, id));
        return new TreeSet<>(found.keySet());
    }

    @Test
    void a_browsers_outbox_brings_every_tap_through_the_same_wifi() throws Exception {
        try (App app = Demo.start(root.resolve("day"));
                LossyProxy wifi = new LossyProxy(app.port(), 0.3, SEED + 1)) {
            String attempt = CalledForTests.call(new Visitor(app.port(), "", 1));
            ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);
            phone.get("http://localhost:" + wifi.port() + "/timing");
            @SuppressWarnings("unchecked")
            List<String> ids = (List<String>) phone.executeAsyncScript(
                    "const done = arguments[arguments.length - 1], attempt = arguments[0];"
                            + "import('/static/js/page.js').then(async (o) => { const ids = [];"
                            + "for (let i = 0; i < 120; i++) ids.push(await o.addTap('watch.landing', {attempt, slot: 1, ms: 1000 + i}));"
                            + "done(ids); })",
                    attempt);
            assertEquals(120, Set.copyOf(ids).size());
            new WebDriverWait(phone, Duration.ofSeconds(60)).until(b -> (Boolean) ((ChromeDriver) b)
                    .executeAsyncScript("const done = arguments[arguments.length - 1];"
                            + "import('/static/js/page.js').then((o) => o.kept()).then((t) => done(t.length === 0))"));
            assertEquals(new TreeSet<>(ids), landings());
            assertTrue(wifi.answersLost.get() + wifi.requestsLost.get() > 0, "the Wi-Fi was bad");
        }
    }
}

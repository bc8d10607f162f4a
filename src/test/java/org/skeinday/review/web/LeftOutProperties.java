package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Json;

/** However flights are left out, taken in, touched and counted: pages say what the journal's lines say, before and after a rebuild. */
@Timeout(120)
class LeftOutProperties {
    private static final int ACTS = 25;
    private static final List<String> REASONS = List.of("touched a wall", "a blade came loose", "stuck aloft");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private SplittableRandom random;
    private final Map<String, String> expected = new TreeMap<>();
    private final Map<String, String> contacts = new TreeMap<>();

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 43);
        for (String attempt : List.of("1", "2")) {
            String flight = KeyedInFlight.of(
                    laptop, Map.of("attempt", attempt, "watch-1", "1:48", "watch-2", "1:48", "contacts", "none"));
            expected.put(flight, "counts");
            contacts.put(flight, "");
        }
        assertEquals(2, expected.size());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void pages_say_what_the_lines_of_the_journal_say(long seed) throws Exception {
        random = new SplittableRandom(seed);
        for (int i = 0; i < ACTS; i++) {
            List<String> flights = List.copyOf(expected.keySet());
            act(flights.get(random.nextInt(flights.size())), i);
            compare("seed " + seed + " after act " + i);
        }
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 44);
        compare("seed " + seed + " after a rebuild");
    }

    private void act(String flight, int number) throws Exception {
        switch (random.nextInt(5)) {
            case 0 -> touched(flight, random.nextInt(3));
            case 1 -> turns(flight);
            case 2 -> word(flight, "counts", "", number);
            case 3 -> word(flight, "left-out", REASONS.get(random.nextInt(REASONS.size())), number);
            default -> staleWord(flight);
        }
    }

    private void touched(String flight, int count) throws Exception {
        ObjectNode item =
                Json.MAPPER.createObjectNode().put("list", "after-landing").put("subject", flight);
        item.put("revision", 1).put("step", "contacts").put("answer", String.valueOf(count));
        assertEquals("saved", laptop.tap("step.tick", item).path("state").asText());
        String words = count == 0 ? "" : count + (count == 1 ? " contact" : " contacts");
        contacts.put(flight, words);
        boolean open = expected.get(flight).startsWith("undecided")
                || expected.get(flight).equals("counts");
        if (open) {
            boolean known = count <= decided.getOrDefault(flight, 0);
            expected.put(flight, known ? "counts" : "undecided: " + words);
        }
    }

    /** How many contacts were known when the last word was said: of a later one nobody has decided. */
    private final Map<String, Integer> decided = new HashMap<>();

    private String seen(String flight) {
        String now = expected.get(flight);
        return now.startsWith("undecided")
                ? "undecided"
                : now.equals("counts") ? "" : now.substring("left out: ".length());
    }

    private void turns(String flight) throws Exception {
        String now = expected.get(flight);
        Map<String, String> told = new HashMap<>(Map.of("attempt", flight, "flight", flight));
        told.putAll(Map.of("remaining", String.valueOf(20 + random.nextInt(20)), "contact", "", "seen", seen(flight)));
        told.put("spoilt", now.startsWith("left out") ? seen(flight) : "");
        told.put("counts", "later");
        assertEquals(200, laptop.form("/winding/landed", told).statusCode());
    }

    /** By a form, or as an act of the record. */
    private void word(String flight, String verdict, String reason, int number) throws Exception {
        String was = expected.get(flight);
        if (random.nextBoolean()) {
            var said = laptop.form(
                    "/evening/word",
                    Map.of("flight", flight, "verdict", verdict, "reason", reason, "seen", seen(flight)));
            assertEquals(200, said.statusCode(), said.body());
        } else {
            ObjectNode content =
                    Json.MAPPER.createObjectNode().put("flight", flight).put("verdict", verdict);
            content.put("reason", reason).put("contact", "").put("seen", seen(flight));
            String id = String.format(Locale.ROOT, "%032x", 1000 + number);
            app.writer()
                    .submit(new Act(
                            id, "flight.counts", "laptop", "", Clock.systemUTC().instant(), content));
        }
        boolean takesIn = verdict.equals("counts") && !was.equals("counts");
        expected.put(flight, verdict.equals("counts") ? "counts" : "left out: " + reason);
        if (takesIn || verdict.equals("left-out")) {
            decided.put(flight, verdict.equals("counts") ? count(contacts.get(flight)) : 0);
        }
    }

    private static int count(String contacts) {
        return contacts.isEmpty() || contacts.equals("none") ? 0 : Integer.parseInt(contacts.replaceFirst(" .*", ""));
    }

    /** Of a form that showed something else. */
    private void staleWord(String flight) throws Exception {
        var late = laptop.form(
                "/evening/word",
                Map.of("flight", flight, "verdict", "counts", "reason", "", "seen", "what nobody said"));
        assertEquals(409, late.statusCode(), late.body());
    }

    private void compare(String when) throws Exception {
        Map<String, String> recount = recount();
        for (Map.Entry<String, String> flight : expected.entrySet()) {
            String page = laptop.get("/evening/flight/" + flight.getKey()).body();
            assertEquals(flight.getValue(), recount.get(flight.getKey()), when);
            assertTrue(page.contains("<dd>" + flight.getValue() + "</dd>"), when + ": " + flight + " in " + page);
        }
    }

    /** From the lines alone, without a table or a class of the program. */
    private Map<String, String> recount() throws Exception {
        Map<String, JsonNode> judged = new HashMap<>();
        Map<String, String> noted = new HashMap<>();
        for (String line : Files.readAllLines(root.resolve("day/journal.jsonl"))) {
            for (JsonNode fact : Json.MAPPER.readTree(line).path("facts")) {
                JsonNode body = fact.path("body");
                String of = body.path("attemptId").asText();
                if (fact.path("kind").asText().equals("attempt.judged")) {
                    judged.put(of, body);
                } else if (fact.path("kind").asText().equals("attempt.noted")) {
                    noted.put(of, body.path("contacts").asText("none"));
                }
            }
        }
        Map<String, String> counts = new HashMap<>();
        for (String flight : expected.keySet()) {
            JsonNode word = judged.getOrDefault(flight, Json.MAPPER.createObjectNode());
            String contact = noted.getOrDefault(flight, "none");
            boolean open = count(contact) > word.path("contacts").asInt();
            String reason = word.path("reason").asText("");
            counts.put(flight, !reason.isEmpty() ? "left out: " + reason : open ? "undecided: " + contact : "counts");
        }
        return counts;
    }
}

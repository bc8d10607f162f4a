package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Whatever is flown, wound, logged and keyed in: every page counts a motor's uses as the journal's lines do. */
@Timeout(300)
class MotorUsesProperties {
    private static final int ACTS = 30;
    private static final String USED = "(not used yet|used \\d+ times?)";
    private static final List<String> TURNS = List.of("40", "90", "150", "200", "230");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private String entry;
    private String attempt = "";
    private String wind = "";
    /** How many places each page had to compare. */
    private final Map<String, Integer> seen = new TreeMap<>();

    private final Map<String, String> ids = new TreeMap<>();
    private final List<String> done = new ArrayList<>();

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 81);
        reader = Demo.joined(app, "timekeeper", "", 82);
        entry = CalledForTests.value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        for (String tag : List.of("A3", "B2", "C1")) {
            ids.put(tag, new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", ""));
        }
        laptop.form("/practice/begin", Map.of());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void every_page_counts_uses_as_the_lines_of_the_journal_do(long seed) throws Exception {
        var random = new SplittableRandom(seed);
        for (int i = 0; i < ACTS; i++) {
            act(random);
            same("seed " + seed + ": " + done);
        }
        Map<String, Integer> before = JournalUses.of(root.resolve("day"));
        assertTrue(ids.keySet().stream().mapToInt(before::get).sum() >= 3, before.toString());
        assertEquals(List.of("cards", "evening", "now"), List.copyOf(seen.keySet()), "each page said something");
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 83);
        same("after a rebuild");
    }

    private void same(String story) throws Exception {
        Map<String, Integer> lines = JournalUses.of(root.resolve("day"));
        Map<String, Integer> bench = rows(laptop.get("/bench").body(), "(?s)>([A-Z]\\d)<.{0,900}?" + USED);
        assertEquals(lines, bench, story);
        assertEquals(lines, rows(laptop.get("/tags").body(), "(?s)<b>([A-Z]\\d)</b>.{0,300}?" + USED), story);
        for (Map.Entry<String, String> motor : ids.entrySet()) {
            int uses = lines.get(motor.getKey());
            assertEquals(
                    uses, said(laptop.get("/bench/motor/" + motor.getValue()).body()), story);
        }
        offers(lines, story);
        cards(lines, story);
        evening(lines, story);
    }

    private static int said(String page) {
        return count(CalledForTests.value(page, USED));
    }

    private static int count(String words) {
        return words.startsWith("not") ? 0 : Integer.parseInt(words.replaceAll("\\D", ""));
    }

    private static Map<String, Integer> rows(String page, String pattern) {
        Map<String, Integer> found = new TreeMap<>();
        Matcher row = Pattern.compile(pattern).matcher(page);
        while (row.find()) {
            found.putIfAbsent(row.group(1), count(row.group(2)));
        }
        return found;
    }

    /** Those that can be called with now. */
    private void offers(Map<String, Integer> lines, String story) throws Exception {
        rows(laptop.get("/now").body(), "<option[^>]*>([A-Z]\\d) · [^<]*?" + USED)
                .forEach((tag, uses) -> {
                    seen.merge("now", 1, Integer::sum);
                    assertEquals(lines.get(tag), uses, tag + " on Now: " + story);
                });
    }

    /** A card is for the use that comes next, when the cards before it are flown as they say. */
    private void cards(Map<String, Integer> lines, String story) throws Exception {
        Map<String, Integer> planned = new TreeMap<>();
        Matcher card = Pattern.compile("<dt>(Motor|Spare)</dt><dd>([A-Z]\\d), use (\\d+)")
                .matcher(laptop.get("/cards").body());
        String flown = "";
        while (card.find()) {
            seen.merge("cards", 1, Integer::sum);
            String tag = card.group(2);
            if (card.group(1).equals("Motor")) {
                planned.merge(flown, 1, Integer::sum);
                flown = tag;
            }
            int before = lines.get(tag) + planned.getOrDefault(tag, 0);
            assertEquals(before + 1, Integer.parseInt(card.group(3)), tag + " on a card: " + story);
        }
    }

    /** No flight is a later use than there were, and none comes twice where all were full windings. */
    private void evening(Map<String, Integer> lines, String story) throws Exception {
        String page = laptop.get("/evening").body();
        Map<String, Integer> latest = new TreeMap<>();
        Matcher flight = Pattern.compile("/evening/flight/([^\"]+)\"").matcher(page);
        while (flight.find()) {
            String one = laptop.get("/evening/flight/" + flight.group(1)).body();
            Matcher motor =
                    Pattern.compile("(?s)<dt>motor</dt>\\s*<dd>([A-Z]\\d)<").matcher(one);
            Matcher use = Pattern.compile("(?s)<dt>use</dt>\\s*<dd>(\\d+)<").matcher(one);
            assertTrue(motor.find() && use.find(), one);
            seen.merge("evening", 1, Integer::sum);
            latest.merge(motor.group(1), Integer.parseInt(use.group(1)), Math::max);
        }
        latest.forEach((tag, use) -> assertTrue(use <= lines.get(tag) + 1, tag + " on Evening: " + story));
    }

    private String any(List<String> of, SplittableRandom random) {
        return of.get(random.nextInt(of.size()));
    }

    private void act(SplittableRandom random) throws Exception {
        String tag = any(List.copyOf(ids.keySet()), random);
        String motor = ids.get(tag);
        String turns = any(TURNS, random);
        String what = any(
                List.of(
                        "call",
                        "move",
                        "begin",
                        "count",
                        "run-back",
                        "abandon",
                        "spare",
                        "close",
                        "practice",
                        "practice",
                        "correct",
                        "card",
                        "card",
                        "alone",
                        "count alone",
                        "take back"),
                random);
        done.add(what + " " + tag + " " + turns);
        switch (what) {
            case "call" -> call(motor);
            case "move" -> form("/attempt/move", Map.of("to", any(List.of("winding", "released", "landed"), random)));
            case "begin" ->
                tapped("wind.begin", content().put("attempt", attempt).put("motor", motor));
            case "count" -> form("/winding/count", counted(turns));
            case "run-back" -> form("/attempt/run-back", Map.of("motor", motor, "turns", turns));
            case "abandon" -> form("/attempt/give-up", Map.of("reason", "the roof leaks"));
            case "spare" -> form("/attempt/take-motor", Map.of("motor", motor, "seenMotor", ""));
            case "close" -> form("/attempt/close", Map.of("why", "both asked"));
            case "take back" -> form("/attempt/take-back", Map.of());
            case "alone" -> tapped("wind.alone", content().put("motor", motor).put("stop", "count"));
            case "count alone" -> form("/winding/motor/" + motor + "/count", counted(turns));
            case "correct" -> correct(turns);
            case "practice" ->
                form(
                        "/practice",
                        Map.of(
                                "model",
                                "Reed One",
                                "motor",
                                tag,
                                "crank-turns",
                                turns,
                                "time",
                                "1:44.2",
                                "earlier",
                                "yes",
                                "valid",
                                "yes"));
            default -> card(tag, turns);
        }
    }

    private void call(String motor) throws Exception {
        String answer = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        Matcher called = Pattern.compile("name=\"attempt\" value=\"([^\"]+)\"").matcher(answer);
        if (called.find() && !called.group(1).equals(attempt)) {
            attempt = called.group(1);
            CalledForTests.letWind(laptop, attempt);
        }
    }

    /** The turns of one practice flight, typed anew in Prepare. */
    private void correct(String turns) throws Exception {
        Matcher row = Pattern.compile("href=\"(/prepare/flights/row/[^\"]+)\"")
                .matcher(laptop.get("/prepare/flights").body());
        if (row.find()) {
            String id = row.group(1).replaceFirst(".*/", "");
            new FilledForms(laptop).save("flights", row.group(1), Map.of("id", id, "crank-turns", turns));
        }
    }

    private Map<String, String> counted(String turns) {
        return Map.of("wind", wind, "atFull", "", "stop", turns, "backOff", "2");
    }

    private void card(String tag, String turns) throws Exception {
        for (int number = 1; number <= 4; number++) {
            var card = new HashMap<>(Map.of("entry", entry, "attempt", String.valueOf(number), "model", "Reed One"));
            card.putAll(Map.of("motor", tag, "stop-count", turns, "watch-1", "1:43.61", "watch-2", "1:43.72"));
            if (laptop.form("/key-in", card).statusCode() == 200) {
                return;
            }
        }
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private void form(String address, Map<String, String> more) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt));
        all.putAll(more);
        var answer = laptop.form(address, all);
        assertTrue(answer.statusCode() < 500, address + " " + answer.body());
    }

    private void tapped(String kind, ObjectNode content) throws Exception {
        String id = reader.newId();
        boolean saved = reader.tapAs(id, kind, content).path("state").asText().equals("saved");
        wind = saved ? id + "-0" : wind;
    }
}

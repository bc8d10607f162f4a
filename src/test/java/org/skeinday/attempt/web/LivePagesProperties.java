package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
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

/** Whatever captain, reader and watch do, and in whatever order: all pages say the same of the attempt. */
@Timeout(300)
class LivePagesProperties {
    private static final int ACTS = 30;

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private String attempt;
    private String entry;
    /** The page Now as it was when the attempt was called, with whom each task can be given to. */
    private String chosen;

    private String title;
    private String wind = "";
    private final List<String> done = new ArrayList<>();

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 71);
        letStartAgain();
        reader = Demo.joined(app, "timekeeper", "", 72);
        String now = laptop.get("/now").body();
        entry = CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor("A3")))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        title = CalledForTests.value(called, "<h1>([^<]+?) <");
        chosen = called;
        CalledForTests.letWind(laptop, attempt);
        reader.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void letStartAgain() throws Exception {
        var forms = new FilledForms(laptop);
        forms.save(
                "rules",
                forms.row("rules", "Saltmarsh Rotor Day"),
                Map.of("if-caught", "ends", "start-again", "yes", "held-watched", "", "held-deduct", ""));
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void every_page_says_the_same_in_every_state_that_can_be_reached(long seed) throws Exception {
        var random = new SplittableRandom(seed);
        LiveFigures before = LiveFigures.of(laptop, attempt, title);
        assertTrue(before.pagesWith("phase") >= 7, before.toString());
        assertTrue(before.pagesWith("rule number") >= 4, before.toString());
        assertTrue(before.pagesWith("winds and reads") >= 3, before.toString());
        assertTrue(before.pagesWith("loads and releases") >= 3, before.toString());
        for (int i = 0; i < ACTS; i++) {
            boolean taken = act(random);
            LiveFigures after = LiveFigures.of(laptop, attempt, title);
            String story = "seed " + seed + ": " + done;
            assertEquals(Map.of(), after.different(), story);
            if (!taken) {
                assertEquals(before.all(), after.all(), "refused, and nothing changed: " + story);
            }
            before = after;
        }
    }

    /** One act of somebody, in whatever phase. @return whether it was taken */
    private boolean act(SplittableRandom random) throws Exception {
        String what = List.of(
                        "winding",
                        "holding",
                        "released",
                        "landed",
                        "broke",
                        "not-broken",
                        "safe",
                        "parted",
                        "spare",
                        "run-back",
                        "abandon",
                        "back",
                        "close",
                        "begin",
                        "stopped",
                        "again",
                        "backed-off",
                        "landing",
                        "hands",
                        "caught",
                        "free",
                        "still-held",
                        "start-again",
                        "stop-hall",
                        "go-on",
                        "protest",
                        "station")
                .get(random.nextInt(27));
        done.add(what);
        return switch (what) {
            case "winding", "holding", "released", "landed" -> form("/attempt/move", Map.of("to", what));
            case "broke" -> form("/attempt/broke", Map.of());
            case "not-broken" -> form("/attempt/not-broken", Map.of("motor", present()));
            case "safe" -> form("/attempt/people-safe", Map.of("motor", present()));
            case "parted" -> form("/attempt/parted", Map.of("motor", present(), "place", "strand"));
            case "spare" -> form("/attempt/take-motor", Map.of("motor", spare(), "seenMotor", present()));
            case "run-back" -> form("/attempt/run-back", Map.of("motor", present(), "turns", "150"));
            case "abandon" -> form("/attempt/give-up", Map.of("reason", "the roof leaks"));
            case "back" -> form("/attempt/take-back", Map.of());
            case "close" -> form("/attempt/close", Map.of("why", "both asked"));
            case "hands" -> hands(random);
            case "caught", "free", "still-held", "start-again" -> form("/attempt/aloft", Map.of("to", what));
            case "stop-hall" -> form("/hall/stop", Map.of("stop-reason", "lights", "stop-words", "half of them"));
            case "go-on" -> goOn();
            case "protest" -> form("/attempt/" + attempt + "/protest", Map.of("words", "launched late"));
            case "station" -> tap("attempt.station", content().put("station", otherPlace()));
            case "begin" -> begin();
            case "landing" -> tap("watch.landing", content().put("slot", 1).put("ms", 61_000));
            default -> wind.isEmpty() || tap("wind.phase", phase(what));
        };
    }

    private boolean goOn() throws Exception {
        Matcher stop = Pattern.compile("name=\"stop\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/first").body());
        return stop.find() && form("/hall/resume", Map.of("stop", stop.group(1)));
    }

    /** The place that it is not wound at. */
    private String otherPlace() throws Exception {
        String record = laptop.get("/attempt/" + attempt).body();
        String other = record.contains("<dd>Spare post") ? "Table by the door" : "Spare post";
        return new FilledForms(laptop).row("stations", other).replaceFirst(".*/", "");
    }

    /** Somebody of the list, or nobody by hand, for each task. */
    private boolean hands(SplittableRandom random) throws Exception {
        Map<String, String> hands = new HashMap<>(Map.of("entry", entry, "number", "1"));
        for (String task : List.of("winds", "reads", "loads", "releases")) {
            List<String> people = Pattern.compile("<option value=\"([^\"]*)\"")
                    .matcher(Pattern.compile("name=\"hand-" + task + "\">(.*?)</select>")
                            .matcher(chosen)
                            .results()
                            .map(found -> found.group(1))
                            .findFirst()
                            .orElseThrow())
                    .results()
                    .map(found -> found.group(1))
                    .toList();
            hands.put("hand-" + task, people.get(random.nextInt(people.size())));
        }
        return form("/attempt/name-hands", hands);
    }

    private ObjectNode content() {
        return Json.MAPPER.createObjectNode().put("attempt", attempt);
    }

    private ObjectNode phase(String what) {
        return Json.MAPPER
                .createObjectNode()
                .put("wind", wind)
                .put("phase", what)
                .put("elapsedMs", 1_000L * done.size());
    }

    private boolean form(String address, Map<String, String> more) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt));
        all.putAll(more);
        HttpResponse<String> answer = laptop.form(address, all);
        assertTrue(answer.statusCode() < 500, address + " " + answer.body());
        return answer.statusCode() == 200;
    }

    /** A tap may come late: it is evidence, whether it moves the attempt or not. */
    private boolean tap(String kind, ObjectNode content) throws Exception {
        return reader.tap(kind, content).path("state").asText().equals("saved");
    }

    private boolean begin() throws Exception {
        String id = reader.newId();
        boolean taken = reader.tapAs(id, "wind.begin", content().put("motor", present()))
                .path("state")
                .asText()
                .equals("saved");
        wind = taken ? id + "-0" : wind;
        return taken;
    }

    private String present() throws Exception {
        String html = laptop.get("/winding/part?flight=" + attempt).body();
        return html.contains("motor B2") ? motor("B2") : html.contains("motor C1") ? motor("C1") : motor("A3");
    }

    private String spare() throws Exception {
        Map<String, String> next = new TreeMap<>(Map.of("A3", "B2", "B2", "C1", "C1", "B2"));
        String now = present();
        for (Map.Entry<String, String> one : next.entrySet()) {
            if (motor(one.getKey()).equals(now)) {
                return motor(one.getValue());
            }
        }
        return now;
    }
}

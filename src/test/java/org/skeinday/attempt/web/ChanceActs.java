package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** What captain, reader and watch do by chance with the attempts of one entry, one after the other. */
final class ChanceActs {
    private static final List<String> ANY = List.of(
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
            "station",
            "type-1",
            "judge",
            "sign",
            "reopen",
            "window",
            "call");

    private final Visitor laptop;
    private final Visitor reader;
    private final String entry;
    /** The page Now as it was when the attempt was called, with whom each task can be given to. */
    private final String chosen;

    private final List<String> done = new ArrayList<>();
    private String attempt = "";
    private String title = "";
    private String wind = "";

    /** Its first attempt is called, with a motor, and may be wound. */
    ChanceActs(App app, Visitor laptop) throws Exception {
        this.laptop = laptop;
        reader = Demo.joined(app, "timekeeper", "", 72);
        entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        chosen = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor("A3")))
                .body();
        isOf(chosen);
        CalledForTests.letWind(laptop, attempt);
    }

    private void isOf(String called) throws Exception {
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        title = CalledForTests.value(called, "<h1>([^<]+?) <");
        wind = "";
        reader.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
    }

    LiveFigures figures() throws Exception {
        var pages = new ReadOnce(laptop);
        LiveFigures figures = LiveFigures.of(pages, attempt, title);
        NextFigures.add(figures, pages, entry, title);
        return figures;
    }

    /** All acts so far. */
    String story() {
        return done.toString();
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    /** Every other act takes the attempt on from where it stands; the others are whatever anybody might do. */
    static String next(LiveFigures now, SplittableRandom random) {
        List<String> on = random.nextBoolean() ? onward(now.said("phase", "record")) : ANY;
        return on.get(random.nextInt(on.size()));
    }

    private static List<String> onward(String phase) {
        return switch (phase.replaceFirst(",.*", "")) {
            case "called" -> List.of("looked", "begin");
            case "winding" -> List.of("stopped", "holding", "broke");
            case "holding" -> List.of("released");
            case "in the air" -> List.of("landed", "landing", "judge");
            case "landed" -> List.of("type-1", "type-2", "close");
            case "provisional" -> List.of("sign", "reopen", "call");
            case "broke" -> List.of("safe", "parted", "spare");
            case "to be run back" -> List.of("run-back");
            case "signed" -> List.of("reopen", "call");
            default -> List.of("call");
        };
    }

    /** One act of somebody, in whatever phase. @return whether it was taken */
    boolean act(String what, SplittableRandom random) throws Exception {
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
            case "looked" -> looked();
            case "type-1", "type-2" -> type(what.substring(5), random);
            case "judge" -> judge(random);
            case "sign" -> sign(random);
            case "reopen" ->
                form("/attempt/" + attempt + "/reopen", Map.of("reason", "a watch was misread", "pin", Demo.PIN));
            case "window" -> moveWindow(random);
            case "call" -> callNext();
            default -> wind.isEmpty() || tap("wind.phase", phase(what));
        };
    }

    private boolean looked() throws Exception {
        boolean waits = laptop.get("/now?attempt=" + attempt).body().contains("Winding waits for");
        CalledForTests.letWind(laptop, attempt);
        return waits;
    }

    private boolean type(String slot, SplittableRandom random) throws Exception {
        String typed = "1:01." + random.nextInt(60, 67);
        return form("/attempt/type-time", Map.of("typed-slot", slot, "typed", typed));
    }

    private boolean judge(SplittableRandom random) throws Exception {
        String verdict = List.of("failed", "left-out", "counts").get(random.nextInt(3));
        return form(
                "/watch/judge",
                Map.of("slot", "" + random.nextInt(1, 3), "verdict", verdict, "judged", "it stood still"));
    }

    private boolean sign(SplittableRandom random) throws Exception {
        Matcher seen = Pattern.compile("name=\"seen\" value=\"(\\d+)\"")
                .matcher(laptop.get("/attempt/" + attempt).body());
        String as = List.of("captain", "watch-1", "watch-2").get(random.nextInt(3));
        return seen.find()
                && form("/attempt/" + attempt + "/sign", Map.of("as", as, "seen", seen.group(1), "pin", Demo.PIN));
    }

    private boolean moveWindow(SplittableRandom random) throws Exception {
        int from = random.nextInt(-30, 30);
        new FilledForms(laptop).window("Curlew", Clock.systemDefaultZone(), from, from + 40);
        return true;
    }

    /** The next attempt, with what is assigned to it; the watch of the last one is taken for it too. */
    private boolean callNext() throws Exception {
        HttpResponse<String> called = laptop.form("/attempt/call", Map.of("entry", entry, "assigned", "yes"));
        assertTrue(called.statusCode() < 500, called.body());
        if (called.statusCode() != 200) {
            return false;
        }
        isOf(called.body());
        return true;
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

package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** Two own attempts in different phases, on one laptop and five phones: each page shows the right one to the end. */
@Timeout(300)
class TwoAtOnceWebTest {
    private static final List<String> BEFORE_RELEASE = List.of("called", "winding", "holding");

    @TempDir
    Path root;

    private final Map<String, Visitor> clients = new LinkedHashMap<>();
    private App app;
    private Visitor laptop;
    private Side curlew;
    private Side avocet;

    /** One attempt with its reader and its watch. @param people who wind and read it */
    private record Side(
            String attempt,
            String title,
            String motor,
            String tag,
            List<String> people,
            Visitor reader,
            Visitor watch) {}

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 21);
        clients.put("laptop", laptop);
        clients.put("captain", Demo.joined(app, "captain", "", 22));
        clients.put("reader one", Demo.joined(app, "helper", "", 23));
        clients.put("reader two", Demo.joined(app, "helper", "", 24));
        clients.put("watch one", Demo.joined(app, "timekeeper", "", 25));
        clients.put("watch two", Demo.joined(app, "timekeeper", "", 26));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private Visitor client(String name) {
        return java.util.Objects.requireNonNull(clients.get(name));
    }

    private Side called(String entry, List<String> people, String reader, String watch) throws Exception {
        String now = laptop.get("/now").body();
        String id = value(now, "(?s)<b>" + entry + "</b>.*?name=\"entry\" value=\"([^\"]+)\"");
        String answer = laptop.form("/attempt/call", Map.of("entry", id, "number", "1", "assigned", "yes"))
                .body();
        String attempt = answer.contains("<h1>" + entry)
                ? value(answer, "name=\"attempt\" value=\"([^\"]+)\"")
                : value(answer, "(?s)<b>" + entry + "</b>.*?/\\?attempt=([^\"]+)\"");
        String winding = laptop.get("/winding/part?flight=" + attempt).body();
        String tag = value(winding, "· motor ([^<]+)<");
        return new Side(
                attempt,
                entry + ", attempt 1",
                value(laptop.get("/bench").body(), "/bench/motor/([^\"]+)\">" + tag + "<"),
                tag,
                people,
                client(reader),
                client(watch));
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private static void saved(Visitor who, String id, String kind, ObjectNode content) throws Exception {
        var answer = who.tapAs(id, kind, content);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private String begin(Side side) throws Exception {
        String id = side.reader().newId();
        saved(
                side.reader(),
                id,
                "wind.begin",
                content().put("attempt", side.attempt()).put("motor", side.motor()));
        return id + "-0";
    }

    private static void phase(Side side, String wind, String phase, long ms) throws Exception {
        saved(
                side.reader(),
                side.reader().newId(),
                "wind.phase",
                content().put("wind", wind).put("phase", phase).put("elapsedMs", ms));
    }

    private static void watch(Side side, String kind, long ms) throws Exception {
        ObjectNode tap = content().put("attempt", side.attempt()).put("slot", 1);
        saved(side.watch(), side.watch().newId(), kind, ms == 0 ? tap : tap.put("ms", ms));
    }

    private static void take(Side side) throws Exception {
        String page = side.watch().get("/timing?attempt=" + side.attempt()).body();
        assertTrue(page.contains("<h1>" + side.title()), "chosen beside the other: " + page);
        HttpResponse<String> taken = side.watch().form("/watch/take", Map.of("attempt", side.attempt(), "slot", "1"));
        assertTrue(taken.body().contains(side.title() + " · watch 1"), taken.body());
    }

    private static HttpResponse<String> close(Visitor who, Side side) throws Exception {
        return who.form("/attempt/close", Map.of("attempt", side.attempt(), "why", "one watch only"));
    }

    /** Every page of every client says of both what the record says, and nothing of one stands with the other. */
    private void agree(String curlewIs, String avocetIs) throws Exception {
        for (Map.Entry<String, Visitor> client : clients.entrySet()) {
            says(client, curlew, curlewIs);
            says(client, avocet, avocetIs);
        }
        for (Side side : List.of(curlew, avocet)) {
            Side other = side == curlew ? avocet : curlew;
            String card =
                    card(side.reader().get("/now?attempt=" + side.attempt()).body());
            if (card.contains("<h1>" + side.title())) {
                assertFalse(card.contains("motor</dt><dd>" + other.tag()), card);
                if (BEFORE_RELEASE.contains(side == curlew ? curlewIs : avocetIs)) {
                    side.people().forEach(person -> assertTrue(card.contains(person), person + " in " + card));
                }
                other.people().forEach(person -> assertFalse(card.contains(person), person + " in " + card));
            }
        }
    }

    /** The first card alone. */
    private static String card(String now) {
        int start = now.indexOf("<section class=\"card\">");
        return now.substring(Math.max(0, start), now.indexOf("</section>", Math.max(0, start)));
    }

    private static void says(Map.Entry<String, Visitor> client, Side side, String phase) throws Exception {
        LiveFigures figures = LiveFigures.of(client.getValue(), side.attempt(), side.title());
        boolean over = phase.equals("provisional");
        if (over) {
            figures.without("checks"); // its lists are those of what is still under way
        }
        String story = client.getKey() + " of " + side.title() + ": " + figures;
        assertEquals(Map.of(), figures.different(), story);
        assertEquals(phase, figures.said("phase", "record"), story);
        String motor = figures.said("motor", "now");
        assertTrue(motor.isEmpty() || motor.equals(side.tag()), story);
    }

    private void begun() throws Exception {
        curlew = called("Curlew", List.of("Tomek", "Ayla"), "reader one", "watch one");
        avocet = called("Avocet", List.of("Jorun", "Pelle"), "reader two", "watch two");
        take(curlew);
        take(avocet);
        CalledForTests.letWind(laptop, curlew.attempt());
        CalledForTests.letWind(laptop, avocet.attempt());
    }

    @Test
    void both_go_to_their_end_and_no_page_takes_one_for_the_other() throws Exception {
        begun();
        agree("called", "called");
        String one = begin(curlew);
        agree("winding", "called");
        String two = begin(avocet);
        agree("winding", "winding");
        ownPages();
        String keys = curlew.reader().get("/winding/part").body();
        assertTrue(keys.contains("data-wind=\"" + one) && !keys.contains(two), "its own keys: " + keys);
        phase(curlew, one, "stopped", 60_000);
        agree("holding", "winding");
        watch(curlew, "watch.release", 0);
        agree("in the air", "winding");
        ownPages();
        phase(avocet, two, "stopped", 61_000);
        agree("in the air", "holding");
        watch(curlew, "watch.landing", 61_000);
        agree("landed", "holding");
        watch(avocet, "watch.release", 0);
        agree("landed", "in the air");
        assertEquals(200, close(laptop, curlew).statusCode());
        agree("provisional", "in the air");
        watch(avocet, "watch.landing", 72_000);
        agree("provisional", "landed");
        assertEquals(200, close(client("captain"), avocet).statusCode());
        agree("provisional", "provisional");
        String sheet = client("watch two").get("/results").body();
        assertTrue(sheet.contains("1:01") && sheet.contains("1:12"), sheet);
    }

    /** Who reads or times one of them is shown that one, without having chosen it. */
    private void ownPages() throws Exception {
        for (Side side : List.of(curlew, avocet)) {
            String winding = side.reader().get("/winding/part").body();
            assertTrue(winding.contains(side.title() + " · motor " + side.tag()), winding);
            String timing = side.watch().get("/timing/part").body();
            assertTrue(timing.contains("<h1>" + side.title() + " · watch 1"), timing);
        }
    }

    @Test
    void now_lists_both_with_their_phase_and_one_key_each_and_a_key_moves_its_own_alone() throws Exception {
        begun();
        begin(curlew);
        String page = laptop.get("/now?attempt=" + avocet.attempt()).body();
        assertTrue(card(page).contains("<h1>" + avocet.title()), page);
        String other = other(page, curlew);
        assertTrue(other.contains("winding</span>"), other);
        assertEquals(2, other.split("class=\"primary\"", -1).length, "one key: " + other);
        assertFalse(
                other(
                                client("reader two")
                                        .get("/now?attempt=" + avocet.attempt())
                                        .body(),
                                curlew)
                        .contains("<button"),
                "only who may tap has it");
        HttpResponse<String> wound = laptop.form(
                "/attempt/move",
                Map.of(
                        "attempt", curlew.attempt(),
                        "shown", avocet.attempt(),
                        "seen", value(other, "name=\"seen\" value=\"([^\"]+)\""),
                        "to", value(other, "name=\"to\" value=\"([^\"]+)\"")));
        assertEquals(200, wound.statusCode(), wound.body());
        assertTrue(card(wound.body()).contains("<h1>" + avocet.title()), "the page stays with its attempt");
        assertTrue(other(wound.body(), curlew).contains("holding</span>"), wound.body());
        agree("holding", "called");
        laptop.form("/attempt/give-up", Map.of("attempt", curlew.attempt(), "reason", "the window is over"));
        assertTrue(client("watch two").get("/bench").body().contains("Curlew, attempt 1, motor " + curlew.tag()));
        assertFalse(
                client("watch two").get("/bench").body().contains("Avocet, attempt 1, motor " + avocet.tag() + "</p>"));
    }

    private static String other(String page, Side side) {
        int start = page.indexOf("data-other=\"" + side.attempt());
        assertTrue(start > 0, page);
        return page.substring(start, page.indexOf("</section>", start));
    }

    @Test
    void the_checks_of_each_are_ticked_while_the_other_is_wound() throws Exception {
        curlew = called("Curlew", List.of(), "reader one", "watch one");
        avocet = called("Avocet", List.of(), "reader two", "watch two");
        CalledForTests.letWind(laptop, avocet.attempt());
        begin(avocet);
        String checks = client("reader one").get("/checks").body();
        assertTrue(checks.contains(curlew.title()), "the one that something is asked of: " + checks);
        assertFalse(checks.contains("Nothing is asked between"), checks);
        CalledForTests.letWind(laptop, curlew.attempt());
        begin(curlew);
        assertTrue(client("reader one").get("/checks").body().contains("Nothing is asked between"));
        agree("winding", "winding");
    }

    /** Whoever chose nothing sees the same attempt on each page: by phase, then by the window that closes first. */
    @Test
    void every_page_puts_the_more_urgent_one_first_and_not_the_one_called_last() throws Exception {
        begun();
        first(curlew, avocet); // both called: its window closes before
        String one = begin(curlew);
        first(curlew, avocet);
        String two = begin(avocet);
        phase(curlew, one, "stopped", 60_000);
        watch(curlew, "watch.release", 0);
        watch(curlew, "watch.landing", 61_000);
        first(avocet, curlew); // what is wound comes before what waits for its time
        phase(avocet, two, "stopped", 61_000);
        first(avocet, curlew);
        String chosen = laptop.get("/now?attempt=" + curlew.attempt()).body();
        assertTrue(card(chosen).contains("<h1>" + curlew.title()), "one's own choice stays: " + chosen);
        assertEquals(200, close(laptop, curlew).statusCode());
        first(avocet, curlew);
    }

    @Test
    void what_landed_and_waits_for_its_time_comes_before_what_is_only_called() throws Exception {
        begun();
        String wind = begin(avocet);
        first(avocet, curlew);
        phase(avocet, wind, "stopped", 60_000);
        watch(avocet, "watch.release", 0);
        watch(avocet, "watch.landing", 61_000);
        first(avocet, curlew);
        assertEquals(200, close(laptop, avocet).statusCode());
        first(curlew, avocet);
    }

    private void first(Side expected, Side other) throws Exception {
        Visitor captain = client("captain");
        String now = captain.get("/now").body();
        assertTrue(card(now).contains("<h1>" + expected.title()), now);
        for (String path : List.of("/winding/part", "/timing/part")) {
            String page = captain.get(path).body();
            assertTrue(page.contains("<h1>" + expected.title()), path + ": " + page);
        }
        for (String path : List.of("/results", "/day")) {
            String page = captain.get(path).body();
            int second = page.indexOf("/attempt/" + other.attempt());
            int before = page.indexOf("/attempt/" + expected.attempt());
            assertTrue(before >= 0 && (second < 0 || before < second), path + ": " + page);
        }
    }
}

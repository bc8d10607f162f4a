package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
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

/** A timekeeper has one watch all day, sees what else is open, and signs whenever they come to it. */
@Timeout(60)
class KeptWatchesWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor one;
    private Visitor two;
    private final Map<String, String> attempts = new HashMap<>();
    private final Set<String> earlier = new HashSet<>();

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 81);
        one = Demo.joined(app, "timekeeper", "", 82);
        two = Demo.joined(app, "timekeeper", "", 83);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void call(String name) throws Exception {
        String entry = CalledForTests.value(
                laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>" + name + "</option>");
        form(laptop, "/attempt/call", Map.of("entry", entry));
        Pattern.compile("href=\"/attempt/([^\"]+)\"|name=\"attempt\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/now").body() + laptop.get("/results/part").body())
                .results()
                .map(found -> found.group(1) == null ? found.group(2) : found.group(1))
                .filter(id -> !attempts.containsValue(id) && !earlier.contains(id))
                .findFirst()
                .ifPresent(id -> earlier.add(Objects.requireNonNullElse(attempts.put(name, id), "")));
    }

    private static void form(Visitor who, String address, Map<String, String> fields) throws Exception {
        var answer = who.form(address, fields);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private String of(String name) {
        return Objects.requireNonNull(attempts.get(name));
    }

    private void take(Visitor who, String name, String slot, Map<String, String> more) throws Exception {
        Map<String, String> fields = new HashMap<>(more);
        fields.put("attempt", of(name));
        fields.put("slot", slot);
        form(who, "/watch/take", fields);
    }

    private void tap(Visitor who, String kind, String name, int slot, long ms) throws Exception {
        var content = Json.MAPPER.createObjectNode().put("attempt", of(name)).put("slot", slot);
        assertEquals(
                "saved",
                who.tap(kind, ms < 0 ? content : content.put("ms", ms))
                        .path("state")
                        .asText());
    }

    private void flown(String name) throws Exception {
        tap(one, "watch.release", name, 1, -1);
        tap(two, "watch.release", name, 2, -1);
        tap(one, "watch.landing", name, 1, 61_000);
        tap(two, "watch.landing", name, 2, 61_100);
        form(laptop, "/attempt/close", Map.of("attempt", of(name), "why", "both were asked"));
    }

    private static String timing(Visitor who) throws Exception {
        return who.get("/timing/part").body();
    }

    private static void says(String page, String words) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    @Test
    void a_watch_is_kept_for_the_next_attempt_and_what_is_to_be_signed_stays_until_it_is() throws Exception {
        call("Curlew");
        take(one, "Curlew", "1", Map.of());
        take(two, "Curlew", "2", Map.of());
        flown("Curlew");
        call("Avocet");
        says(timing(one), "Avocet, attempt 1 · watch 1");
        says(timing(two), "Avocet, attempt 1 · watch 2");
        says(timing(one), "Still to sign");
        String signing = CalledForTests.value(timing(one), "(?s)Still to sign.*?name=\"seen\" value=\"(\\d+)\"");
        form(one, "/watch/sign", Map.of("attempt", of("Curlew"), "slot", "1", "seen", signing));
        assertFalse(timing(one).contains("Still to sign"), timing(one));
        says(timing(two), "Still to sign");
        flown("Avocet");
        call("Curlew");
        String left = timing(two);
        says(left, "Sign for watch 2");
        assertEquals(2, left.split("Sign for watch 2", -1).length - 1, "of both flights: " + left);
    }

    @Test
    void who_still_times_another_flight_keeps_none_and_the_page_says_what_is_free() throws Exception {
        call("Curlew");
        take(one, "Curlew", "1", Map.of());
        take(two, "Curlew", "2", Map.of());
        tap(one, "watch.release", "Curlew", 1, -1);
        call("Avocet");
        Visitor three = Demo.joined(app, "timekeeper", "", 84);
        says(
                three.get("/timing/part?attempt=" + of("Curlew")).body(),
                "Avocet, attempt 1: called, watches 1, 2 are free");
        take(three, "Avocet", "2", Map.of());
        says(two.get("/timing/part?attempt=" + of("Curlew")).body(), "Curlew, attempt 1 · watch 2");
        says(laptop.get("/timing/part?attempt=" + of("Curlew")).body(), "Avocet, attempt 1: called, watch 1 is free");
        says(
                laptop.get("/timing/part?attempt=" + of("Avocet")).body(),
                "Curlew, attempt 1: in the air, all watches are taken");
    }

    @Test
    void a_watch_is_changed_before_the_release_and_then_kept() throws Exception {
        call("Curlew");
        take(one, "Curlew", "1", Map.of());
        says(timing(one), "Use another watch");
        take(one, "Curlew", "2", Map.of("change", "yes"));
        says(timing(one), "Curlew, attempt 1 · watch 2");
        take(two, "Curlew", "1", Map.of());
        tap(one, "watch.release", "Curlew", 2, -1);
        assertFalse(timing(one).contains("Use another watch"), "it flies");
        assertEquals(
                422,
                one.form("/watch/take", Map.of("attempt", of("Curlew"), "slot", "1", "change", "yes", "over", "yes"))
                        .statusCode());
        tap(one, "watch.landing", "Curlew", 2, 61_000);
        tap(two, "watch.landing", "Curlew", 1, 61_050);
        form(laptop, "/attempt/close", Map.of("attempt", of("Curlew"), "why", "both were asked"));
        call("Avocet");
        says(timing(one), "Avocet, attempt 1 · watch 2");
        says(timing(two), "Avocet, attempt 1 · watch 1");
    }
}

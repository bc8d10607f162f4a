package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

/** Who only looks on, by an address of its own. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(120)
class SpectatorsWebTest {
    private static final List<String> PAGES = List.of("/results/wall", "/results", "/results/order");
    private static final Pattern LINK = Pattern.compile("(?:href|src|data-refetch|hx-post|hx-get)=\"(/[^\"#]*)\"");

    @TempDir
    static Path root;

    private House house;

    @BeforeAll
    void start() throws Exception {
        house = new House(root.resolve("day"));
        house.joined("timekeeper");
    }

    @AfterAll
    void stop() throws Exception {
        house.close();
    }

    @Test
    void everything_that_their_pages_lead_to_is_served_to_them() throws Exception {
        Visitor spectator = house.spectator();
        List<String> wrong = new ArrayList<>();
        for (String page : PAGES) {
            HttpResponse<String> answer = spectator.get(page);
            assertEquals(200, answer.statusCode(), page);
            for (String to : new TreeSet<>(LINK.matcher(answer.body())
                    .results()
                    .map((MatchResult found) -> found.group(1))
                    .toList())) {
                int status = to.equals("/light")
                        ? spectator.form(to, Map.of("light", "")).statusCode()
                        : spectator.get(to.replace("&amp;", "&")).statusCode();
                if (status >= 400) {
                    wrong.add(page + " leads to " + to + ": " + status);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void no_name_of_the_crew_or_of_a_device_is_on_their_pages() throws Exception {
        List<String> names = new ArrayList<>();
        Json.MAPPER
                .readTree(Files.readString(house.folder.resolve("people.json"), StandardCharsets.UTF_8))
                .elements()
                .forEachRemaining(name -> names.add(name.isTextual() ? name.asText() : name.toString()));
        assertFalse(names.isEmpty());
        for (String page : PAGES) {
            String body = house.spectator().get(page).body();
            assertTrue(body.contains("Curlew"), page + " shows no entry");
            for (String name : names) {
                assertFalse(body.contains(name), page + " names " + name);
            }
        }
    }

    @Test
    void the_order_says_who_is_called_and_what_is_next_for_whom() throws Exception {
        String body = house.spectator().get("/results/order").body();
        assertTrue(body.contains("<h1>Now: "), body);
        assertTrue(Pattern.compile("called, attempt 1").matcher(body).find(), body);
        assertTrue(body.contains("is next"), body);
    }

    @Test
    void a_stranger_who_opens_the_address_looks_on_and_a_wrong_one_opens_nothing() throws Exception {
        Visitor stranger = house.nobody();
        assertEquals(401, stranger.get("/results").statusCode());
        assertEquals(404, stranger.get("/look/00000000").statusCode());
        HttpResponse<String> in = stranger.get("/look/" + house.spectatorsCode());
        assertEquals(303, in.statusCode());
        assertEquals("/results/wall", in.headers().firstValue("Location").orElseThrow());
        String cookie = in.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
        Visitor spectator = new Visitor(house.app.port(), cookie, 31);
        assertEquals(200, spectator.get("/results").statusCode());
        assertEquals(403, spectator.get("/").statusCode());
        HttpResponse<String> again = spectator.get("/look/" + house.spectatorsCode());
        assertTrue(again.headers().firstValue("Set-Cookie").isEmpty(), "it stays the one it is");
    }

    @Test
    void who_has_joined_stays_what_it_is_and_a_spectator_joins_as_any_other() throws Exception {
        HttpResponse<String> scanned = house.joined("helper").get("/look/" + house.spectatorsCode());
        assertTrue(scanned.headers().firstValue("Set-Cookie").isEmpty());
        Visitor spectator = house.spectator();
        String token = house.app.joinLink().replaceFirst(".*#", "");
        Map<String, String> asks = Map.of("token", token, "code", "", "role", "spectator", "person", "");
        assertEquals(422, spectator.form("/join", asks).statusCode(), "nobody joins as one");
        HttpResponse<String> joined =
                spectator.form("/join", Map.of("token", token, "code", "", "role", "helper", "person", ""));
        assertEquals(204, joined.statusCode(), joined.body());
        assertTrue(joined.headers().firstValue("Set-Cookie").isPresent());
        assertEquals(
                422,
                spectator.form("/join", Map.of("code", "", "role", "helper")).statusCode(),
                "without the code");
    }
}

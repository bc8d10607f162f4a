package org.skeinday.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
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
import org.skeinday.prepare.FilledForms;

/** Cards into the record. */
@Timeout(60)
class KeyInWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 31);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String entry(String name) throws Exception {
        Matcher found = Pattern.compile("<option value=\"([^\"]+)\"[^>]*>" + name + "</option>")
                .matcher(laptop.get("/key-in").body());
        assertTrue(found.find(), name);
        return found.group(1);
    }

    private HttpResponse<String> key(String entry, Map<String, String> more) throws Exception {
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", "A3", "spare", "B2", "stop-count", "201", "peak-torque", "0.62 in-ozf"));
        card.putAll(
                Map.of("back-off", "3", "launch-torque", "0.41 in-ozf", "watch-1", "1:43.61", "watch-2", "1:43.72"));
        card.putAll(Map.of("remaining", "22.5", "note", "steady"));
        card.putAll(more);
        return laptop.form("/key-in", card);
    }

    @Test
    void a_card_becomes_a_closed_attempt_marked_from_paper_with_all_its_numbers() throws Exception {
        var saved = key(entry("Curlew"), Map.of());
        assertEquals(200, saved.statusCode(), saved.body());
        assertTrue(saved.body().contains("Saved from paper: Curlew, attempt 1"));
        String results = laptop.get("/results").body();
        assertTrue(results.contains("from paper"), results);
        assertTrue(results.contains("1:43.7"), "two watches, the longer, tenths down");
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 32);
        assertTrue(laptop.get("/results").body().contains("from paper"), "and after a rebuild");
    }

    @Test
    void watches_in_doubt_need_a_word_in_the_note_which_stands_on_the_sheet() throws Exception {
        String curlew = entry("Curlew");
        Map<String, String> apart = new HashMap<>(Map.of("watch-2", "1:43.92", "note", ""));
        wrong("note", "are 0.31 s apart, more than 0.3 s", key(curlew, apart));
        apart.put("watch-2", "");
        wrong("note", "Of 2 watches 1 is heard of", key(curlew, apart));
        apart.put("note", "the other watch fell");
        assertEquals(200, key(curlew, apart).statusCode());
        assertTrue(laptop.get("/results").body().contains("In doubt: the other watch fell"));
    }

    @Test
    void what_is_wrong_on_a_card_stands_beside_its_field_and_nothing_is_saved() throws Exception {
        String curlew = entry("Curlew");
        long before = Files.size(root.resolve("day/journal.jsonl"));
        wrong("watch-1", "is not a time", key(curlew, Map.of("watch-1", "1.43.6")));
        wrong("motor", "There is no motor 'A33'; did you mean 'A3'?", key(curlew, Map.of("motor", "A33")));
        wrong("peak-torque", "has the unknown unit", key(curlew, Map.of("peak-torque", "0.62 or so")));
        wrong("stop-count", "is no whole number", key(curlew, Map.of("stop-count", "20.5")));
        wrong("watch-1", "A card needs at least one watch", key(curlew, Map.of("watch-1", "", "watch-2", "")));
        wrong("attempt", "1 of this entry is missing", key(curlew, Map.of("attempt", "2")));
        assertEquals(before, Files.size(root.resolve("day/journal.jsonl")));
    }

    private static void wrong(String field, String words, HttpResponse<String> answer) {
        assertEquals(422, answer.statusCode(), answer.body());
        String own = answer.body().replaceAll("(?s).*id=\"w-" + field + "\">(.*?)</p>.*", "$1");
        assertTrue(own.contains(words), words + " in " + own);
    }

    @Test
    void the_same_card_keyed_in_twice_is_refused_the_second_time() throws Exception {
        String curlew = entry("Curlew");
        assertEquals(200, key(curlew, Map.of()).statusCode());
        wrong("attempt", "in the record already", key(curlew, Map.of()));
    }

    @Test
    void a_card_takes_no_more_attempts_than_a_call_does() throws Exception {
        String curlew = entry("Curlew");
        for (int number = 1; number <= 3; number++) {
            assertEquals(
                    200, key(curlew, Map.of("attempt", String.valueOf(number))).statusCode());
        }
        wrong("attempt", "Curlew has had its 3 attempts; the rules allow no more", key(curlew, Map.of("attempt", "4")));
        String avocet = entry("Avocet");
        assertEquals(200, laptop.form("/attempt/call", Map.of("entry", avocet)).statusCode());
        wrong("attempt", "attempt 1 is still called", key(avocet, Map.of("attempt", "2", "model", "Reed Two")));
    }

    @Test
    void a_motor_that_was_counted_back_meanwhile_is_not_flown_again_by_the_card() throws Exception {
        String curlew = entry("Curlew");
        String now = laptop.get("/now").body();
        String motor = CalledForTests.value(now, "<option value=\"([^\"]+)\"[^>]*>A3 ");
        laptop.form("/attempt/call", Map.of("entry", curlew, "motor", motor));
        String attempt = CalledForTests.letWind(laptop);
        for (String to : new String[] {"winding", "holding", "released", "landed"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        }
        assertEquals(1, flown(), "at its release");
        String back = laptop.tap(
                        "bench.step",
                        Json.MAPPER.createObjectNode().put("motor", motor).put("deed", "unwind"))
                .toString();
        assertTrue(back.contains("saved"), back);
        HttpResponse<String> saved = key(curlew, Map.of());
        assertEquals(200, saved.statusCode(), saved.body());
        assertEquals(1, flown(), "what the bench did since stands");
        assertEquals(200, key(curlew, Map.of("attempt", "2")).statusCode());
        assertEquals(1, flown(), "nor by a card of an attempt that nobody called");
        assertEquals(
                200,
                key(entry("Curlew"), Map.of("attempt", "3", "motor", "B2", "spare", "A3"))
                        .statusCode());
        assertEquals(2, flown(), "a ready one was flown with");
    }

    private long flown() throws Exception {
        return Files.readAllLines(root.resolve("day/journal.jsonl")).stream()
                .filter(line -> line.contains("\"deed\":\"fly\""))
                .count();
    }

    @Test
    void elsewhere_the_announced_time_is_what_counts() throws Exception {
        new FilledForms(laptop)
                .save(
                        "events",
                        new FilledForms(laptop).row("events", "Saltmarsh Rotor Day"),
                        Map.of("kind", "visiting"));
        String curlew = entry("Curlew");
        wrong("announced", "needs the time that the officials announced", key(curlew, Map.of()));
        assertEquals(200, key(curlew, Map.of("announced", "1:43.5")).statusCode());
        assertTrue(laptop.get("/results").body().contains("1:43.5"));
    }
}

package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

/** Three attempts by the rules: what uses up none keeps its number, on every page, card and sheet. */
@Timeout(120)
class NumberingWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 96);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String page(String address) throws Exception {
        return laptop.get(address).body();
    }

    private String entry() throws Exception {
        return CalledForTests.value(page("/now"), "name=\"entry\" value=\"([^\"]+)\"");
    }

    /** Called from the list: without a motor nothing is to be run back. */
    private String called() throws Exception {
        HttpResponse<String> answer = laptop.form("/attempt/call", Map.of("entry", entry(), "motor", ""));
        assertEquals(200, answer.statusCode(), answer.body());
        return CalledForTests.value(answer.body(), "name=\"attempt\" value=\"([^\"]+)\"");
    }

    private void abandoned() throws Exception {
        HttpResponse<String> answer =
                laptop.form("/attempt/give-up", Map.of("attempt", called(), "reason", "a rib broke"));
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private HttpResponse<String> keyed(String number) throws Exception {
        Map<String, String> card = new HashMap<>(Map.of("entry", entry(), "attempt", number, "model", "Reed One"));
        card.putAll(Map.of("stop-count", "200", "back-off", "3", "watch-1", "1:01.61", "watch-2", "1:01.72"));
        return laptop.form("/key-in", card);
    }

    private static void assertSays(String page, String words) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    @Test
    void an_abandoned_attempt_keeps_its_number_for_the_next_try_on_card_plan_paper_and_sheet() throws Exception {
        String before = page("/cards");
        for (int i = 0; i < 4; i++) {
            abandoned();
        }
        assertSays(page("/now"), "<h1>Curlew, attempt 1, 5th try");
        assertSays(page("/bench"), "Curlew, attempt 1, 5th try");
        assertSays(page("/day"), "Curlew 3 is left out");
        assertFalse(page("/day").contains("Curlew 4"), "as many as the rules have");
        String cards = page("/cards");
        assertEquals(count(before, "Curlew, attempt"), count(cards, "Curlew, attempt"), "one each of those left");
        assertSays(cards, "Curlew, attempt 1, 5th try");
        assertSays(cards, "Curlew, attempt 3 <span");
        assertSays(cards, "<span>called ………</span> <span>winding ………</span>");
        assertSays(cards, "<span>signed ………</span>");
        String results = page("/results");
        assertFalse(results.contains("<th scope=\"col\" class=\"number\">4</th>"), results);
        assertSays(results, "Curlew, attempt 1, 4th try");
        String curlew = entry();
        String again = called();
        assertSays(page("/attempt/" + again), "Curlew, attempt 1, 5th try");
        assertSays(page("/timing/part?attempt=" + again), "Curlew, attempt 1, 5th try");
        for (String address : List.of("/now", "/day", "/bench", "/cards", "/results", "/evening/search?q=curlew")) {
            assertFalse(Pattern.compile("attempt [4-9]").matcher(page(address)).find(), address + ": " + page(address));
        }
        HttpResponse<String> second = laptop.form("/attempt/call", Map.of("entry", entry(), "motor", ""));
        assertSays(
                second.body(),
                "attempt 1, 5th try is still called. "
                        + "What can be done now: Start winding, Released, Another motor, Abandon attempt.");
        laptop.form("/attempt/move", Map.of("attempt", again, "to", "released"));
        second = laptop.form("/attempt/call", Map.of("entry", curlew, "motor", ""));
        assertSays(second.body(), "is still in the air. What can be done now: ");
        assertSays(second.body(), "Declare it void");
        assertFalse(second.body().contains("abandon it first"), "what is in the air is not abandoned");
    }

    @Test
    void an_attempt_that_is_opened_again_while_the_next_is_called_leaves_the_plan_those_of_the_rules()
            throws Exception {
        assertEquals(200, keyed("1").statusCode());
        String first = CalledForTests.value(page("/results"), "href=\"/attempt/([^\"]+)\">1:01.7");
        String second = called();
        HttpResponse<String> opened =
                laptop.form("/attempt/" + first + "/reopen", Map.of("reason", "a watch was wrong"));
        assertEquals(200, opened.statusCode(), opened.body());
        String proposed = laptop.form("/day/propose", Map.of()).body();
        String proposal = CalledForTests.value(proposed, "name=\"proposal\" value=\"([^\"]+)\"");
        assertEquals(200, laptop.form("/day/take", Map.of("proposal", proposal)).statusCode());
        String day = page("/day");
        for (String task : List.of("Curlew 2 wind", "Curlew 3 is left out")) {
            assertSays(day, task);
        }
        assertFalse(day.contains("Curlew 4"), "the rules have three");
        assertFalse(day.contains("Curlew 1 wind"), "what has landed is not wound again");
        List<String> stands = Pattern.compile("aria-label=\"Where ([^\"]+) stands\"")
                .matcher(day)
                .results()
                .map(found -> found.group(1))
                .toList();
        assertEquals(
                List.of("Curlew, attempt 1", "Curlew, attempt 2"),
                stands.stream().sorted().toList());
        assertSays(page("/attempt/" + second), "aria-label=\"Where this attempt stands\"");
    }

    @Test
    void a_card_is_keyed_in_by_the_number_that_stands_on_it() throws Exception {
        abandoned();
        assertSays(page("/key-in"), "value=\"1\"");
        assertSays(keyed("2").body(), "Next of Curlew is attempt 1, 2nd try; this card says 2");
        assertSays(keyed("2").body(), "If it is the flight after the last one in the record, write 1");
        assertSays(keyed("1").body(), "Saved from paper: Curlew, attempt 1, 2nd try");
        assertSays(keyed("1").body(), "Next of Curlew is attempt 2; this card says 1");
        String results = page("/results");
        assertTrue(
                Pattern.compile(
                                "<td class=\"number attempt\"><span class=\"try\"><a[^>]*? href=\"[^\"]+\">1:01.7</a>"
                                        + " <small>2nd try</small></span> </td><td class=\"number attempt\"><span class=\"try\"><span>–")
                        .matcher(results)
                        .find(),
                results);
    }

    @Test
    void a_void_flight_that_is_flown_again_stands_beside_its_repeat() throws Exception {
        String first = called();
        laptop.form("/attempt/move", Map.of("attempt", first, "to", "released"));
        laptop.form("/attempt/give-up", Map.of("attempt", first, "reason", "a ball", "again", "yes"));
        assertEquals(200, keyed("1").statusCode());
        assertTrue(
                Pattern.compile(
                                "<span class=\"try\"><a href=\"[^\"]+\">void</a> <small>flown again</small></span>"
                                        + " <span class=\"try\"><a[^>]*? href=\"[^\"]+\">1:01.7</a> <small>2nd try</small></span> </td>")
                        .matcher(page("/results"))
                        .find(),
                page("/results"));
        assertSays(page("/results/wall"), "<small>2nd try</small>");
        assertSays(page("/now"), "Curlew, attempt 2 ");
    }

    private static long count(String page, String words) {
        return Pattern.compile(words).matcher(page).results().count();
    }
}

package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Demo;

/** Once a flight is official the rules change only with a reason and the PIN, after what that moves was seen. */
@Timeout(120)
class FrozenRulesWebTest {
    @TempDir
    Path root;

    private ChiefsDay day;

    @BeforeEach
    void start() throws Exception {
        day = new ChiefsDay(root.resolve("day"), "", "");
    }

    @AfterEach
    void stop() throws Exception {
        day.close();
    }

    private HttpResponse<String> save(String kind, Map<String, String> change) throws Exception {
        return day.forms.save(kind, day.forms.row(kind, ChiefsDay.EVENT), change);
    }

    /** First without a word, then with what the form showed. @return what it showed that the change moves */
    private String changed(String kind, Map<String, String> change) throws Exception {
        HttpResponse<String> asked = save(kind, change);
        assertEquals(422, asked.statusCode(), asked.body());
        String moves = ChiefsDay.found(asked.body(), "name=\"moves\" value=\"([^\"]+)\"");
        HttpResponse<String> saved = day.forms.saveFrozen(kind, day.forms.row(kind, ChiefsDay.EVENT), change);
        assertEquals(204, saved.statusCode(), saved.body());
        return moves;
    }

    @Test
    void before_the_first_official_flight_nothing_is_asked() throws Exception {
        assertFalse(
                day.laptop.get(day.forms.row("events", ChiefsDay.EVENT)).body().contains("frozen-why"));
        assertEquals(204, save("events", Map.of("to", "0.01")).statusCode());
        assertFalse(day.sheet().contains("Changed after"), day.sheet());
    }

    @Test
    void afterwards_each_of_seen_moves_reason_and_pin_is_needed() throws Exception {
        day.flown("Curlew", "1:01.65", "1:01.71");
        String form = day.laptop.get(day.forms.row("rules", ChiefsDay.EVENT)).body();
        assertTrue(form.contains("the rules are frozen"), form);
        HttpResponse<String> asked = save("rules", Map.of("repeats", "2"));
        assertEquals(422, asked.statusCode());
        assertTrue(asked.body().contains("No time and no place changes. Signatures stay."), asked.body());
        String moves = ChiefsDay.found(asked.body(), "name=\"moves\" value=\"([^\"]+)\"");
        HttpResponse<String> noPin = save("rules", Map.of("repeats", "2", "moves", moves, "frozen-why", "a misprint"));
        assertTrue(noPin.statusCode() == 422 && noPin.body().contains("the coach's PIN changes them"), noPin.body());
        String wrong = Demo.PIN.startsWith("1") ? "222222" : "111111";
        HttpResponse<String> wrongPin =
                save("rules", Map.of("repeats", "2", "moves", moves, "frozen-why", "a misprint", "pin", wrong));
        assertTrue(wrongPin.statusCode() == 422 && wrongPin.body().contains("not the coach"), wrongPin.body());
        HttpResponse<String> noReason = save("rules", Map.of("repeats", "2", "moves", moves, "pin", Demo.PIN));
        assertTrue(noReason.statusCode() == 422 && noReason.body().contains("Say why"), noReason.body());
        HttpResponse<String> unseen =
                save("rules", Map.of("repeats", "2", "frozen-why", "a misprint", "pin", Demo.PIN));
        assertEquals(422, unseen.statusCode(), "nobody has seen what it moves");
        assertFalse(day.sheet().contains("Rules changed"), day.sheet());
        changed("rules", Map.of("repeats", "2"));
        assertTrue(day.sheet().contains("Rules changed at "), day.sheet());
        assertTrue(
                day.laptop.get("/results/wall/part").body().contains(": a misprint in the invitation</p>"),
                day.laptop.get("/results/wall/part").body());
        assertTrue(day.laptop.get("/results.json").body().contains("repeats 1 → 2"));
    }

    @Test
    void the_hall_may_be_named_anew_without_a_word() throws Exception {
        day.flown("Curlew", "1:01.65", "1:01.71");
        assertEquals(204, save("events", Map.of("hall", "Dune Hall")).statusCode());
    }

    /** Sums of means, each rounded down: in thousandths, beside what the program says. */
    @Test
    void another_step_computes_each_time_anew_moves_places_and_asks_for_signatures_again() throws Exception {
        String curlew = day.flown("Curlew", "1:01.61", "1:01.61");
        day.flown("Plover", "1:01.69", "1:01.69");
        day.flown("Curlew", "1:00.09", "1:00.09");
        day.flown("Plover", "1:00.00", "1:00.00");
        day.flown("Avocet", "0:59.38", "0:59.41");
        day.signed(curlew);
        assertEquals("1 2:01.6", day.places().get("Curlew"), "61.6 + 60.0");
        assertEquals("1 2:01.6", day.places().get("Plover"), "61.6 + 60.0, and the best single is the same");
        String moves = changed("events", Map.of("to", "0.01"));
        assertTrue(moves.startsWith("4 times and 1 place change"), moves);
        assertTrue(moves.contains("Curlew, attempt 1: 1:01.6 → 1:01.61"), moves);
        assertTrue(moves.contains("Avocet, attempt 1: 0:59.3 → 0:59.39"), "the mean 59.395, down: " + moves);
        assertTrue(moves.contains("Curlew: place 1 → 2") || moves.contains("Plover: place 1 → 2"), moves);
        assertTrue(moves.contains("1 signed, to be signed again"), moves);
        assertEquals("1 2:01.70", day.places().get("Curlew"), "61.61 + 60.09");
        assertEquals("2 2:01.69", day.places().get("Plover"), "61.69 + 60.00");
        assertEquals("3 0:59.39", day.places().get("Avocet"));
        assertTrue(day.record(curlew).contains("Sign 1:01.61"), "it is asked again: " + day.record(curlew));
        String sheet = day.sheet();
        day.rebuilt();
        assertEquals(sheet, day.sheet());
    }

    @Test
    void a_time_that_no_watch_can_make_anew_keeps_the_step() throws Exception {
        String attempt = day.flown("Curlew", "1:01.65", "1:01.71");
        String moved = changed("events", Map.of("to", "0.01"));
        assertTrue(moved.contains("1 time and no place"), moved);
        day.close();
        HostedDay.into(root.resolve("files-only"), 4, 2, 31);
        day.app = Demo.startEmpty(Demo.withPin(root.resolve("files-only")));
        day.laptop = new org.skeinday.Visitor(day.app.port(), "", 77);
        day.forms = new org.skeinday.prepare.FilledForms(day.laptop);
        HttpResponse<String> mixed = save("events", Map.of("to", "0.01"));
        assertEquals(422, mixed.statusCode());
        assertTrue(mixed.body().contains("Times of two steps never stand on one sheet"), attempt + mixed.body());
    }

    @Test
    void a_score_by_other_rules_moves_places_and_no_time() throws Exception {
        day.flown("Curlew", "1:40.00", "1:40.00");
        day.flown("Plover", "1:10.00", "1:10.00");
        day.flown("Curlew", "0:31.00", "0:31.00");
        day.flown("Plover", "1:05.00", "1:05.00");
        assertEquals("2 2:11.0", day.places().get("Curlew"));
        String moves = changed("events", Map.of("score", "best"));
        assertTrue(moves.startsWith("No time and 2 places change: "), moves);
        assertEquals("1 1:40.0", day.places().get("Curlew"));
    }

    @Test
    void a_moved_window_takes_a_reason_stands_on_sheet_and_record_and_changes_no_verdict() throws Exception {
        day.forms.add(
                "windows",
                Map.of(
                        "event",
                        ChiefsDay.EVENT,
                        "entry",
                        "Curlew",
                        "opens",
                        "2026-05-09 10:00",
                        "closes",
                        "2026-05-09 10:20"));
        String attempt = day.flown("Curlew", "1:01.65", "1:01.71");
        String judged = ChiefsDay.found(day.record(attempt), "<dt>window</dt><dd>([^<]+)</dd>");
        String row = day.forms.row("windows", "Curlew");
        Map<String, String> later = Map.of("closes", "2026-05-09 10:40");
        HttpResponse<String> asked = day.forms.save("windows", row, later);
        assertTrue(asked.statusCode() == 422 && asked.body().contains("say why the window is moved"), asked.body());
        Map<String, String> why = new HashMap<>(later);
        why.put("frozen-why", "the lights failed");
        assertEquals(204, day.forms.save("windows", row, why).statusCode());
        assertTrue(
                day.sheet().contains("10:00–10:20 → 10:00–10:40. the lights failed. No verdict changes."), day.sheet());
        assertTrue(day.record(attempt).contains("<dt>window moved</dt>"), day.record(attempt));
        assertEquals(judged, ChiefsDay.found(day.record(attempt), "<dt>window</dt><dd>([^<]+)</dd>"));
        String audit = day.laptop.get("/audit.csv?of=windows").body();
        assertTrue(audit.contains("2026-05-09 10:20:00,2026-05-09 10:40:00,the lights failed"), audit);
    }
}

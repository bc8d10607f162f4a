package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.TestIds;
import org.skeinday.Visitor;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayFiles;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** What the team decides in the evening: three lines for next time, a new season; and the search. */
@Timeout(90)
class EveningDeedsWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 41);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String journal() throws Exception {
        return Files.readString(root.resolve("day/journal.jsonl"));
    }

    @Test
    void what_to_change_next_time_stands_where_the_next_event_is_prepared() throws Exception {
        String page = laptop.get("/evening").body();
        String event = CalledForTests.value(page, "name=\"event\" value=\"([^\"]+)\"");
        Map<String, String> form = new HashMap<>(Map.of("event", event, "line", "Lubricate the evening before"));
        HttpResponse<String> saved = laptop.form("/evening/change", form);
        assertEquals(200, saved.statusCode(), saved.body());
        assertTrue(saved.body().contains("Saved.") && saved.body().contains("Lubricate the evening before"));
        assertTrue(laptop.get("/prepare").body().contains("Lubricate the evening before"));
        HttpResponse<String> stale = laptop.form("/evening/change", Map.of("event", event, "line", "Other"));
        assertEquals(409, stale.statusCode());
        assertTrue(stale.body().contains("Someone else has written meanwhile"), stale.body());
        assertTrue(stale.body().contains("value=\"Other\""), "what was typed stays");
        form.put("seen", "Lubricate the evening before");
        form.put("line", "x".repeat(201));
        HttpResponse<String> longer = laptop.form("/evening/change", form);
        assertEquals(422, longer.statusCode());
        assertTrue(longer.body().contains("200 characters"), longer.body());
        form.put("line", " ");
        assertEquals(200, laptop.form("/evening/change", form).statusCode(), "taken back");
        assertFalse(laptop.get("/prepare").body().contains("Lubricate"));
        assertEquals(
                404, laptop.form("/evening/change", Map.of("event", "none")).statusCode());
    }

    @Test
    void a_new_season_is_shown_in_words_and_begun_in_one_act_that_leaves_past_events_as_they_were() throws Exception {
        String page = laptop.get("/evening/season").body();
        String mattis = CalledForTests.value(page, "value=\"([^\"]+)\"[^>]*>Mattis");
        assertEquals(422, laptop.get("/evening/season?first=tomorrow").statusCode());
        assertEquals(
                422, laptop.get("/evening/season?first=2099-09-01&months=0").statusCode());
        String shown = laptop.get("/evening/season?first=2099-09-01&months=12&leaves=" + mattis)
                .body();
        assertTrue(shown.contains("Mattis leaves the team"), shown);
        assertTrue(shown.contains("Ines is cleared anew before loading a wound motor."), shown);
        assertTrue(shown.contains("Batch A is "), shown);
        String body = FilledForms.posted(shown, "/evening/season");
        HttpResponse<String> outdated = laptop.formBody("/evening/season", body.replaceFirst("seen=[^&]*&?", ""));
        assertEquals(409, outdated.statusCode(), outdated.body());
        HttpResponse<String> begun = laptop.formBody("/evening/season", body);
        assertEquals(200, begun.statusCode(), begun.body());
        assertTrue(begun.body().contains("The season from 2099-09-01 has begun."), begun.body());
        assertTrue(journal().contains("season.begun") && journal().contains("crew.removed"));
        assertFalse(laptop.get("/evening/season").body().contains("Mattis"), "gone from those who help");
        assertTrue(laptop.get("/prepare").body().contains("break two or three motors"), "aged batches are named");
        assertEquals(List.of(), taken(laptop.bytes("/export.zip")), "what goes out can come in again");
    }

    private static List<CellError> taken(byte[] zipped) throws Exception {
        Map<String, String> texts = Visitor.unzipped(zipped);
        assertTrue(texts.containsKey("crew.csv"), texts.keySet().toString());
        return DayFiles.read(texts, Day.EMPTY, TestIds.from("n"), ZoneId.systemDefault(), Duration.ZERO)
                .errors();
    }

    @Test
    void everything_that_has_a_name_is_found_and_an_odd_query_finds_nothing() throws Exception {
        String found = laptop.get("/search?q=reed+one").body();
        assertTrue(found.contains("<b>Reed One</b>") && found.contains(">model</span>"), found);
        assertTrue(laptop.get("/search?q=A3").body().contains("href=\"/bench/motor/"));
        assertTrue(laptop.get("/search?q=Ines").body().contains(">person</span>"));
        assertTrue(laptop.get("/search?q=saltmarsh").body().contains("Saltmarsh Rotor Day"));
        assertTrue(laptop.get("/search?q=zzzzqqq").body().contains("Nothing in the record"));
        assertEquals(200, laptop.get("/search").statusCode());
        assertEquals(200, laptop.get("/search?q=%25%3Cb%3E").statusCode());
        assertEquals(200, laptop.get("/search?q=" + "a".repeat(3000)).statusCode());
    }
}

package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
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

/** A contact that is told after the turns were noted, and after the flight was taken in again, waits for a word. */
@Timeout(60)
class ContactToldLaterWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String flight;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 38);
        flight = KeyedInFlight.of(laptop, "none", "2:10");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void noted(Map<String, String> more) throws Exception {
        Map<String, String> told = new HashMap<>(Map.of("attempt", flight, "flight", flight, "remaining", "44"));
        told.putAll(Map.of("spoilt", "", "contact", ""));
        told.putAll(more);
        var answer = laptop.form("/winding/landed", told);
        assertEquals(200, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("Noted."), answer.body());
    }

    /** As the list after the landing asks for it. */
    private void contacts(int count) throws Exception {
        ObjectNode item = Json.MAPPER.createObjectNode().put("list", "after-landing");
        item.put("subject", flight).put("revision", 1).put("step", "contacts").put("answer", String.valueOf(count));
        assertEquals("saved", laptop.tap("step.tick", item).path("state").asText());
    }

    private void said(String verdict, String reason, String seen) throws Exception {
        var answer = laptop.form(
                "/evening/word", Map.of("flight", flight, "verdict", verdict, "reason", reason, "seen", seen));
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private void counts(String words) throws Exception {
        String page = laptop.get("/evening/flight/" + flight).body();
        assertTrue(page.contains("<dd>" + words + "</dd>"), words + " in " + page);
    }

    @Test
    void whoever_notes_turns_alone_has_said_nothing_of_a_contact() throws Exception {
        noted(Map.of("seen", ""));
        counts("counts");
        assertFalse(Files.readString(root.resolve("day/journal.jsonl")).contains("attempt.judged"));
        assertTrue(laptop.get("/winding").body().contains("<p class=\"quiet\">all told</p>"));
        contacts(1);
        counts("undecided: 1 contact");
        assertTrue(laptop.get("/winding").body().contains("still to be told: whether it counts<"));
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 39);
        counts("undecided: 1 contact");
        noted(Map.of("seen", "undecided", "counts", "yes"));
        counts("counts");
    }

    @Test
    void a_word_holds_for_the_contact_that_was_known_and_a_form_sent_back_as_it_was_says_no_more() throws Exception {
        said("left-out", "a blade came loose", "");
        noted(Map.of("seen", "a blade came loose", "spoilt", "a blade came loose"));
        assertEquals(1, judgements(), "the reason was there already");
        said("counts", "", "a blade came loose");
        counts("counts");
        contacts(2);
        counts("undecided: 2 contacts");
        said("left-out", "touched twice", "undecided");
        said("counts", "", "touched twice");
        counts("counts");
        noted(Map.of("seen", "", "remaining", "43"));
        counts("counts");
        assertEquals(4, judgements());
    }

    @Test
    void a_word_about_one_contact_decides_nothing_of_a_second_that_is_told_later() throws Exception {
        contacts(1);
        said("counts", "", "undecided");
        counts("counts");
        contacts(2);
        counts("undecided: 2 contacts");
        byFiles("undecided");
        said("counts", "", "undecided");
        contacts(1);
        counts("counts");
        byFiles("yes");
    }

    /** As the bundle of files says it. */
    private void byFiles(String word) throws Exception {
        String bundle = laptop.get("/export.json").body();
        assertTrue(bundle.matches("(?s).*\"counts\" ?: ?\"" + word + "\".*"), bundle);
        assertEquals(word.equals("undecided"), bundle.contains("\"undecided\""), bundle);
    }

    @Test
    void enter_in_a_field_of_a_flight_s_page_saves_its_turns_and_decides_nothing() throws Exception {
        contacts(1);
        String address = "/evening/flight/" + flight;
        String page = laptop.get(address).body();
        String form = page.substring(page.indexOf("hx-post=\"" + address + "\""));
        assertTrue(
                form.substring(form.indexOf("<button"))
                        .startsWith("<button class=\"second\" name=\"verdict\" value=\"turns\""),
                form);
        Map<String, String> turns = new HashMap<>(Map.of("verdict", "turns", "remaining", "41", "seen", "undecided"));
        turns.putAll(Map.of("spoilt", "1 contact", "contact", ""));
        var saved = laptop.form(address, turns);
        assertEquals(200, saved.statusCode(), saved.body());
        assertTrue(saved.body().contains("value=\"41\"") && saved.body().contains("<dd>undecided: 1 contact</dd>"));
        turns.put("spoilt", "it fell");
        var typed = laptop.form(address, turns);
        assertEquals(422, typed.statusCode(), typed.body());
        assertTrue(
                typed.body().contains("Say by one of the two keys")
                        && typed.body().contains("it fell"),
                typed.body());
        said("left-out", "it fell", "undecided");
        turns.putAll(Map.of("seen", "it fell", "remaining", "40"));
        assertEquals(200, laptop.form(address, turns).statusCode());
        counts("left out: it fell");
        assertEquals(1, judgements());
        String practice = CalledForTests.value(
                laptop.get("/evening").body() + laptop.get("/practice").body(),
                "href=\"/prepare/flights/row/([^\"]+)\"");
        String other = laptop.get("/evening/flight/" + practice).body();
        assertTrue(
                other.indexOf("<button disabled hidden>") > 0
                        && other.indexOf("<button disabled hidden>") < other.indexOf("name=\"verdict\""),
                other);
    }

    private long judgements() throws Exception {
        return Files.readString(root.resolve("day/journal.jsonl")).split("attempt\\.judged", -1).length - 1;
    }
}

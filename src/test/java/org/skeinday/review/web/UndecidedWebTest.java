package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalDateTime;
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

/** A flight with a contact is undecided until somebody says; what is left out, is left out in one act, and taken in again. */
@Timeout(90)
class UndecidedWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 37);
        FlownSeason.into(app, 20, LocalDateTime.now().minusHours(2), 5);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String keyedIn(String contacts, String time) throws Exception {
        return KeyedInFlight.of(laptop, contacts, time);
    }

    private HttpResponse<String> word(String flight, Map<String, String> fields) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("flight", flight));
        all.putAll(fields);
        return laptop.form("/evening/word", all);
    }

    @Test
    void a_contact_on_a_card_is_undecided_and_enters_no_forecast_until_one_act_decides() throws Exception {
        String flight = keyedIn("touched the beam", "2:10");
        String first = laptop.get("/evening").body();
        String look = CalledForTests.value(first, "<option value=\"(event:[^\"]+)\"[^>]*>Saltmarsh Rotor Day");
        String evening = laptop.get("/evening?look=" + look).body();
        assertTrue(evening.contains("1 flight is undecided"), evening);
        assertTrue(evening.contains("undecided: touched the beam"), "and in the table");

        HttpResponse<String> counted =
                word(flight, Map.of("verdict", "counts", "reason", "touched the beam", "seen", "undecided"));
        assertEquals(200, counted.statusCode(), counted.body());
        assertTrue(counted.body().contains("The forecast for Reed One with A changed from "), counted.body());
        assertTrue(counted.body().contains("(7 flights on any use), to "), counted.body());
        assertTrue(counted.body().contains("(8 flights on any use)."), counted.body());
        assertFalse(counted.body().contains("1 flight is undecided"), "nobody is asked again");
    }

    @Test
    void leaving_a_flight_out_and_taking_it_in_again_is_one_act_each_and_two_at_once_hear_of_each_other()
            throws Exception {
        String flight = keyedIn("2", "2:10");
        Map<String, String> out = Map.of("verdict", "left-out", "reason", "touched twice", "seen", "undecided");
        assertEquals(
                422, word(flight, Map.of("verdict", "left-out", "reason", " ")).statusCode(), "without a reason");
        assertEquals(200, word(flight, out).statusCode());
        HttpResponse<String> second = word(flight, Map.of("verdict", "counts", "reason", "", "seen", "undecided"));
        assertEquals(409, second.statusCode());
        assertTrue(second.body().contains("has judged this flight meanwhile: it says nothing, touched twice"));
        String page = laptop.get("/evening/flight/" + flight).body();
        assertTrue(page.contains("left out: touched twice") && page.contains("It counts after all"), page);
        Map<String, String> in = Map.of("verdict", "valid", "spoilt", "", "remaining", "", "seen", "touched twice");
        HttpResponse<String> taken = laptop.form("/evening/flight/" + flight, in);
        assertEquals(200, taken.statusCode(), taken.body());
        assertTrue(taken.body().contains("(7 flights on any use), to "), taken.body());
    }

    @Test
    void a_practice_flight_is_left_out_and_taken_in_by_the_same_act() throws Exception {
        keyedIn("none", "2:10");
        String flight = CalledForTests.value(laptop.get("/practice").body(), "href=\"/prepare/flights/row/([^\"]+)\"");
        HttpResponse<String> out = word(flight, Map.of("verdict", "left-out", "reason", "a rib was loose"));
        assertEquals(200, out.statusCode(), out.body());
        assertTrue(laptop.get("/practice").body().contains("not valid: a rib was loose"));
        assertEquals(
                200,
                word(flight, Map.of("verdict", "counts", "seen", "a rib was loose"))
                        .statusCode());
        assertFalse(laptop.get("/practice").body().contains("not valid: a rib was loose"));
        assertEquals(404, word("nothing", Map.of("verdict", "counts")).statusCode());
    }

    @Test
    void an_unlikely_number_of_a_card_is_asked_about_and_taken_when_it_is_so() throws Exception {
        Map<String, String> card =
                KeyedInFlight.card(laptop, Map.of("remaining", "330", "watch-1", "1:58", "watch-2", "1:58"));
        var asked = laptop.form("/key-in", card);
        assertEquals(422, asked.statusCode(), asked.body());
        assertTrue(asked.body().contains("More turns are left than it was launched with: 330 of 207"), asked.body());
        card.put("insist", CalledForTests.value(asked.body(), "name=\"insist\" value=\"([^\"]+)\""));
        assertEquals(200, laptop.form("/key-in", card).statusCode());
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("1 flight has numbers to be confirmed"), evening);
        assertTrue(evening.contains("turns remaining 330: doubted: More turns are left"), evening);
    }

    @Test
    void a_card_without_a_contact_is_decided() throws Exception {
        keyedIn("none", "2:10");
        assertFalse(laptop.get("/evening").body().contains("undecided"));
    }

    @Test
    void a_form_of_the_landing_that_stood_open_does_not_take_in_what_was_left_out_meanwhile() throws Exception {
        String flight = keyedIn("2", "2:10");
        String open = laptop.get("/winding/part?flight=" + flight).body();
        String seen = CalledForTests.value(open, "name=\"seen\" value=\"([^\"]*)\"");
        assertEquals("undecided", seen);
        word(flight, Map.of("verdict", "left-out", "reason", "touched twice", "seen", seen));
        Map<String, String> late = new HashMap<>(Map.of("attempt", flight, "flight", flight, "remaining", "20"));
        late.putAll(Map.of("spoilt", "", "contact", "", "seen", seen));
        String told = laptop.form("/winding/landed", late).body();
        assertTrue(told.contains("has judged this flight meanwhile: it says nothing, touched twice"), told);
        assertTrue(laptop.get("/evening/flight/" + flight).body().contains("left out: touched twice"));
        String anew = laptop.get("/winding/part?flight=" + flight).body();
        assertEquals("touched twice", CalledForTests.value(anew, "name=\"seen\" value=\"([^\"]*)\""));
    }
}

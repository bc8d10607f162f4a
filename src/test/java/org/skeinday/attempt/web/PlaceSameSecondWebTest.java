package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.prepare.FilledForms;

/** Two devices choose winding places, or call, in one second and from the same page: one wins, the other hears of it. */
@Timeout(300)
class PlaceSameSecondWebTest extends TwoPlacesDay {
    private static final Pattern KEY =
            Pattern.compile("<button class=\"second\" data-tap=\"attempt.station\" ([^>]*)>");
    private static final Pattern DATA = Pattern.compile("data-([a-z]+)=\"([^\"]*)\"");

    private final ExecutorService both = Executors.newFixedThreadPool(2);

    @AfterEach
    void endBoth() {
        both.shutdownNow();
    }

    private <T> List<T> atOnce(Callable<T> one, Callable<T> other) throws Exception {
        List<T> answers = new ArrayList<>();
        for (Future<T> answer : both.invokeAll(List.of(one, other))) {
            answers.add(answer.get());
        }
        return answers;
    }

    /** What the key of a page sends, as its script does. */
    private ObjectNode key(Side side, String place) throws Exception {
        Matcher keys = KEY.matcher(laptop.get("/now?attempt=" + side.attempt()).body());
        while (keys.find()) {
            ObjectNode sent = about(side);
            DATA.matcher(keys.group(1)).results().forEach(one -> sent.put(one.group(1), one.group(2)));
            if (sent.path("station").asText().equals(place(place))) {
                return sent;
            }
        }
        throw new AssertionError("No key for " + place);
    }

    /** One is saved; the other is told what happened and who did it. */
    private void oneWins(List<JsonNode> answers, String meanwhile) {
        List<String> states =
                answers.stream().map(a -> a.path("state").asText()).toList();
        assertEquals(Set.of("saved", "refused"), new HashSet<>(states), answers.toString());
        boolean laptopWon = states.get(0).equals("saved");
        String told = answers.get(laptopWon ? 1 : 0).path("reason").asText();
        says(meanwhile, told);
        says((laptopWon ? "The laptop" : "Another device") + " said 'Another winding place' at ", told);
    }

    @Test
    void two_devices_that_move_one_attempt_to_two_places_do_not_both_win() throws Exception {
        new FilledForms(laptop).add("stations", Map.of("station", "Window sill", "meter", "dial 3"));
        ObjectNode toTable = key(curlew, "Table by the door");
        ObjectNode toSill = key(curlew, "Window sill");
        List<JsonNode> answers =
                atOnce(() -> laptop.tap("attempt.station", toTable), () -> reader.tap("attempt.station", toSill));
        oneWins(answers, "Curlew, attempt 1 was moved to ");
        String first = answers.get(0).path("state").asText().equals("saved") ? "Table by the door" : "Window sill";
        says(first, woundAt(curlew));
        saved(reader.tap("attempt.station", first.equals("Window sill") ? toSill : toTable));
        says(first, woundAt(curlew));
    }

    @Test
    void a_place_that_was_free_on_both_pages_is_taken_once() throws Exception {
        new FilledForms(laptop).add("stations", Map.of("station", "Window sill", "meter", "dial 3"));
        ObjectNode one = key(curlew, "Window sill");
        ObjectNode other = key(avocet, "Window sill");
        List<JsonNode> answers =
                atOnce(() -> laptop.tap("attempt.station", one), () -> reader.tap("attempt.station", other));
        oneWins(answers, "Window sill was taken for ");
        boolean curlewWon = answers.get(0).path("state").asText().equals("saved");
        says("Window sill", woundAt(curlewWon ? curlew : avocet));
        assertEquals(curlewWon ? TABLE : POST, woundAt(curlewWon ? avocet : curlew), "stays where it was");
        ObjectNode again = key(curlewWon ? avocet : curlew, "Window sill");
        saved(laptop.tap("attempt.station", again));
        says("Window sill", woundAt(curlewWon ? avocet : curlew));
    }

    @Test
    void two_entries_that_are_called_at_once_get_a_place_each() throws Exception {
        for (Side side : List.of(curlew, avocet)) {
            laptop.form("/attempt/give-up", Map.of("attempt", side.attempt(), "reason", "the hall is too warm"));
        }
        List<Side> called = atOnce(() -> called("Curlew", 2), () -> called("Avocet", 2));
        assertEquals(Set.of(POST, TABLE), Set.of(woundAt(called.get(0)), woundAt(called.get(1))));
    }

    /** The same second, with the first crank turn of one and another place of the other. */
    @Test
    void who_moves_an_attempt_that_is_being_wound_already_hears_who_cranked() throws Exception {
        ObjectNode toTable = key(curlew, "Table by the door");
        begin(curlew);
        JsonNode late = laptop.tap("attempt.station", toTable);
        assertEquals("refused", late.path("state").asText(), late.toString());
        says("before the first crank turn", late.path("reason").asText());
        says("Another device said 'Start winding' at ", late.path("reason").asText());
    }
}

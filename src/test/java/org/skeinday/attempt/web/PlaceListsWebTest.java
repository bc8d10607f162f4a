package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;
import org.skeinday.steps.Step;

/** Each winding place has a list of its own, with its own mount: what was answered at one says nothing of another. */
@Timeout(300)
class PlaceListsWebTest extends TwoPlacesDay {
    private static final String LIST = "winding-place";
    private static final String MOUNT_FIRST =
            "The line comes last, just before winding. Before it: “Mount pulled; say how hard” and 2 more";

    /** The list of a place, as its link on Checks has it. */
    private String subject(String place) throws Exception {
        return event() + "~" + place(place);
    }

    private String event() throws Exception {
        return org.skeinday.fault.CalledForTests.value(
                laptop.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
    }

    private static ObjectNode item(String list, String subject, String step) {
        return Json.MAPPER
                .createObjectNode()
                .put("list", list)
                .put("subject", subject)
                .put("step", step)
                .put("revision", list.equals(LIST) ? 1 : 2);
    }

    private void done(String place) throws Exception {
        saved(laptop.tap("step.tick", item(LIST, subject(place), "mount-pulled").put("answer", "60")));
        saved(laptop.tap("step.tick", item(LIST, subject(place), "distances").put("answer", "by eye")));
        saved(laptop.tap("step.tick", item(LIST, subject(place), "adult-here")));
    }

    /** All that is critical before winding but the line. */
    private void checked(Side side, String ratio) throws Exception {
        for (String step : List.of("adult", "motor", "mount", "rings", "model-away", Step.EYES)) {
            saved(laptop.tap("step.tick", item("before-winding", side.attempt(), step)));
        }
        String way = side.equals(curlew) ? "cw" : "ccw";
        JsonNode said = laptop.tap(
                "step.tick", item("before-winding", side.attempt(), "direction").put("answer", way));
        if (!said.path("state").asText().equals("saved")) {
            saved(laptop.tap(
                    "step.tick",
                    item("before-winding", side.attempt(), "direction")
                            .put("answer", way.equals("cw") ? "ccw" : "cw")));
        }
        saved(laptop.tap(
                "step.tick", item("before-winding", side.attempt(), "ratio").put("answer", ratio)));
    }

    private JsonNode line(Side side) throws Exception {
        return laptop.tap("step.tick", item("before-winding", side.attempt(), Step.LINE));
    }

    private static void refused(String words, JsonNode answer) {
        assertEquals("refused", answer.path("state").asText(), answer.toString());
        assertEquals(words, answer.path("reason").asText());
    }

    private String waits(Side side) throws Exception {
        String now = laptop.get("/winding/part?flight=" + side.attempt()).body();
        return now.contains("Winding waits for")
                ? org.skeinday.fault.CalledForTests.value(now, "(Winding waits for [^<]*)")
                : "";
    }

    private Map<String, String> row(String place) throws Exception {
        var forms = new FilledForms(laptop);
        return forms.shown(forms.row("stations", place));
    }

    @Test
    void what_was_answered_at_one_place_says_nothing_of_another_and_stays_over_a_start_from_the_journal()
            throws Exception {
        Map<String, String> before = row("Table by the door");
        done("Spare post");
        says("11", waits(avocet));
        says("Mount pulled", waits(avocet));
        saysNot("Mount pulled", waits(curlew));
        assertEquals("60", row("Spare post").get("pull-test"), "noted of its own mount");
        assertEquals(before, row("Table by the door"));
        String lists = laptop.get("/checks").body();
        says("Winding place: Spare post", lists);
        says("Winding place: Table by the door", lists);
        fromTheJournal();
        says("Mount pulled", waits(avocet));
        saysNot("Mount pulled", waits(curlew));
    }

    @Test
    void the_adults_answer_for_one_place_does_not_hold_at_another() throws Exception {
        var pass = laptop.form(
                "/checks/gate",
                Map.of("attempt", curlew.attempt(), "adult", "Mrs Grebe", "passed", "the post is held by two"));
        assertEquals(200, pass.statusCode(), pass.body());
        saysNot("Mount pulled", waits(curlew));
        saved(choose(curlew, "Table by the door"));
        checked(curlew, "10");
        refused(MOUNT_FIRST, line(curlew));
        says("Mount pulled", waits(curlew));
        done("Table by the door");
        saved(line(curlew));
        assertEquals("", waits(curlew), "all was looked at there");
        saved(choose(curlew, "Spare post"));
        says("Winding waits for", waits(curlew));
        checked(curlew, "20");
        saved(line(curlew));
        assertEquals("", waits(curlew), "what was said of the post holds there");
    }

    @Test
    void the_line_waits_for_the_list_of_the_attempts_own_place_and_is_asked_again_after_it() throws Exception {
        done("Table by the door");
        checked(curlew, "20");
        refused(MOUNT_FIRST, line(curlew));
        done("Spare post");
        saved(line(curlew));
        assertEquals("", waits(curlew));
        String event = event();
        String pulled = laptop.newId();
        saved(laptop.tapAs(pulled, "step.tick", item(LIST, subject("Spare post"), "adult-here")));
        assertEquals("", waits(curlew), "a second witness opens nothing");
        harderMotor();
        says("Mount pulled", waits(curlew));
        saved(laptop.tap(
                "step.tick", item(LIST, subject("Spare post"), "mount-pulled").put("answer", "400")));
        says("nobody but the winder in line", waits(curlew).toLowerCase(java.util.Locale.ROOT));
        saved(line(curlew));
        assertEquals("", waits(curlew));
        assertEquals(event, event());
    }

    /** The mount was pulled with less than its motor asks for once it is measured anew. */
    private void harderMotor() throws Exception {
        var forms = new FilledForms(laptop);
        forms.save("motors", forms.row("motors", "B2"), Map.of("mass", "9 g", "loop", "300 mm"));
        var taken = laptop.form(
                "/attempt/take-motor",
                Map.of(
                        "attempt",
                        curlew.attempt(),
                        "motor",
                        forms.row("motors", "B2").replaceFirst(".*/", ""),
                        "seenMotor",
                        org.skeinday.fault.CalledForTests.value(keys(curlew), "data-of=\"([^\"]+)\"")));
        assertEquals(200, taken.statusCode(), taken.body());
        checked(curlew, "20");
    }
}

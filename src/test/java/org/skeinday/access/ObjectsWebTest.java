package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** A role alone is not enough: nobody touches what is another's by changing ids. */
@Timeout(30)
class ObjectsWebTest {
    @TempDir
    Path root;

    private House house;
    private Visitor one;
    private Visitor other;

    /** The laptop is watch 1; watch 2 is the other's. */
    @BeforeEach
    void start() throws Exception {
        house = new House(root.resolve("day"));
        one = house.joined("timekeeper");
        other = house.joined("timekeeper");
        assertEquals(
                200,
                other.form("/watch/take", Map.of("attempt", house.attempt, "slot", "2"))
                        .statusCode());
    }

    @AfterEach
    void stop() throws Exception {
        house.close();
    }

    private ObjectNode watch(int slot) {
        return Json.MAPPER.createObjectNode().put("attempt", house.attempt).put("slot", slot);
    }

    private static void refused(JsonNode answer) {
        assertEquals("refused", answer.path("state").asText(), answer.toString());
    }

    private void land(Visitor who, int slot, long ms) throws Exception {
        assertEquals(
                "saved",
                who.tap("watch.landing", watch(slot).put("ms", ms))
                        .path("state")
                        .asText());
    }

    @Test
    void a_timekeeper_presses_no_key_of_anothers_watch() throws Exception {
        String before = house.head();
        for (int slot = 0; slot <= 3; slot++) {
            refused(one.tap("watch.release", watch(slot)));
            refused(one.tap("watch.landing", watch(slot).put("ms", 61_000)));
            refused(one.tap("watch.mark", watch(slot).put("what", "ready")));
        }
        assertEquals(before, house.head());
    }

    @Test
    void a_device_named_in_the_body_is_not_believed() throws Exception {
        String before = house.head();
        ObjectNode body = Json.MAPPER.createObjectNode().put("device", "laptop").put("person", "p");
        body.set(
                "taps",
                Json.MAPPER
                        .createArrayNode()
                        .add(Visitor.tap(one.newId(), "watch.release", watch(1))
                                .put("device", "laptop")
                                .put("dev", "laptop")));
        assertTrue(one.post("/taps", body.toString()).body().contains("refused"));
        assertEquals(403, one.post("/taps/file", body.toString()).statusCode(), "only a captain brings a file in");
        assertEquals(before, house.head());
    }

    @Test
    void a_watch_takes_back_only_what_it_has_sent_itself() throws Exception {
        String id = house.laptop.newId();
        house.laptop.tapAs(id, "watch.landing", watch(1).put("ms", 61_210));
        land(other, 2, 61_250);
        other.tap("watch.mark", watch(2).put("what", "still-flying").put("about", id));
        assertTrue(house.laptop.get("/now").body().contains("1:01.21"), "the reading of watch 1 stays");
    }

    @Test
    void nobody_signs_for_anothers_watch() throws Exception {
        land(house.laptop, 1, 61_210);
        land(other, 2, 61_250);
        HttpResponse<String> late =
                one.form("/watch/take", Map.of("attempt", house.attempt, "slot", "2", "over", "yes"));
        assertTrue(late.body().contains("stays with the device that timed it"), late.body());
        assertEquals(
                200,
                house.laptop
                        .form("/attempt/close", Map.of("attempt", house.attempt, "why", "as read"))
                        .statusCode());
        String official = CalledForTests.value(other.get("/timing/part").body(), "name=\"seen\" value=\"(\\d+)\"");
        String before = house.head();
        Map<String, String> forged = Map.of("attempt", house.attempt, "slot", "2", "seen", official, "over", "yes");
        assertTrue(one.form("/watch/take", forged).body().contains("Nobody takes a watch of it any more"));
        assertEquals(422, one.form("/watch/sign", forged).statusCode());
        assertEquals(
                422,
                one.form("/attempt/" + house.attempt + "/sign", Map.of("as", "watch-2", "seen", official))
                        .statusCode());
        assertEquals(
                422,
                one.form("/attempt/" + house.attempt + "/sign", Map.of("as", "captain", "seen", official))
                        .statusCode());
        assertEquals(before, house.head());
        assertEquals(200, other.form("/watch/sign", forged).statusCode());
    }

    @Test
    void a_forged_form_calls_no_motor_and_no_model_of_another_team() throws Exception {
        house.laptop.form("/attempt/give-up", Map.of("attempt", house.attempt, "reason", "A rib broke"));
        String now = house.laptop.get("/now").body();
        String plover = CalledForTests.value(now, "(?s)Plover.*?name=\"entry\" value=\"([^\"]+)\"");
        String motor = CalledForTests.value(house.laptop.get("/bench").body(), "/bench/motor/([^\"/]+)");
        String model = CalledForTests.value(now, "(?s)name=\"model\".*?<option value=\"([^\"]+)\"");
        String before = house.head();
        HttpResponse<String> ours = house.laptop.form("/attempt/call", Map.of("entry", plover, "motor", motor));
        assertEquals(422, ours.statusCode());
        assertTrue(ours.body().contains("takes part for Sedgeway Club, but motor"), ours.body());
        assertEquals(
                422,
                house.laptop
                        .form("/attempt/call", Map.of("entry", plover, "model", model))
                        .statusCode());
        assertEquals(before, house.head());
        assertEquals(
                200, house.laptop.form("/attempt/call", Map.of("entry", plover)).statusCode());
        String theirs = CalledForTests.value(house.laptop.get("/now").body(), "name=\"attempt\" value=\"([^\"]+)\"");
        Visitor helper = house.joined("helper");
        refused(helper.tap(
                "attempt.take-motor",
                Json.MAPPER
                        .createObjectNode()
                        .put("attempt", theirs)
                        .put("motor", motor)
                        .put("seenMotor", "")));
    }
}

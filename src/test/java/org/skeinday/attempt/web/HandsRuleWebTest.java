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
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** From the first crank turn to the release no page of whoever is at the motor has a key; nobody loses the last one. */
@Timeout(90)
class HandsRuleWebTest {
    private static final String BOUND = "You are the one who winds it: until the release you have no key here.";
    private static final String ALONE = "You are alone at the motor: the keys stay here.";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;
    private String winder;
    private Visitor own;

    @BeforeEach
    void callWithAWinder() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 81);
        CalledForTests.callWithItsMotor(laptop);
        attempt = CalledForTests.letWind(laptop);
        winder = CalledForTests.value(
                laptop.get("/now").body(), "(?s)name=\"hand-winds\">.*?<option value=\"([^\"]+)\"");
        name("winds", winder);
        own = Demo.joined(app, "captain", "", 82, winder);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void name(String task, String person) throws Exception {
        String now = laptop.get("/now").body();
        done(
                "/attempt/name-hands",
                "entry",
                CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\""),
                "number",
                "1",
                "hand-winds",
                winder,
                "hand-" + task,
                person,
                "hands-seen",
                CalledForTests.value(now, "name=\"hands-seen\" value=\"([^\"]*)\""));
    }

    private void done(String address, String... fields) throws Exception {
        Map<String, String> form = new HashMap<>(Map.of("attempt", attempt));
        for (int i = 0; i < fields.length; i += 2) {
            form.put(fields[i], fields[i + 1]);
        }
        HttpResponse<String> answer = laptop.form(address, form);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private static String page(Visitor who, String address) throws Exception {
        return who.get(address).body();
    }

    private void joinsAnother() throws Exception {
        Demo.joined(app, "helper", "", 83);
    }

    @Test
    void a_captain_who_winds_has_only_the_emergency_on_now() throws Exception {
        joinsAnother();
        assertTrue(page(own, "/now").contains("/attempt/move"), "called: hands are free");
        done("/attempt/move", "to", "winding");
        String now = page(own, "/now");
        assertTrue(now.contains(BOUND), now);
        assertFalse(now.contains("/attempt/") && now.contains("hx-post=\"/attempt/"), now);
        assertFalse(now.contains("/event/use") || now.contains("hx-post=\"/window"), now);
        assertTrue(now.contains("hx-post=\"/hall/stop\""), "the emergency stays");
        assertTrue(page(laptop, "/now").contains("/attempt/move"), "a shared device keeps its keys");
        done("/attempt/move", "to", "holding");
        assertTrue(page(own, "/now").contains(BOUND), "held by hand");
        done("/attempt/move", "to", "released");
        assertTrue(page(own, "/now").contains("/attempt/move"), page(own, "/now"));
    }

    @Test
    void the_bench_and_the_winding_page_of_a_winder_have_none_either() throws Exception {
        joinsAnother();
        assertTrue(page(own, "/bench/part").contains("data-tap="), "called: hands are free");
        done("/attempt/move", "to", "winding");
        String bench = page(own, "/bench/part");
        assertTrue(bench.contains(BOUND) && !bench.contains("data-tap="), bench);
        assertTrue(page(laptop, "/bench/part").contains("data-tap="), "others have theirs");
        String winding = page(own, "/winding/part");
        assertTrue(winding.contains(BOUND), winding);
        assertFalse(winding.contains("data-reader") || winding.contains("data-tap="), winding);
        assertTrue(page(laptop, "/winding/part").contains("data-reader"), "others read");
        done("/attempt/broke");
        assertFalse(page(own, "/bench/part").contains(BOUND), "after a break whoever is nearest tells");
    }

    @Test
    void where_the_winder_began_to_read_the_others_are_offered_to_read_on() throws Exception {
        joinsAnother();
        String motor = CalledForTests.value(page(own, "/winding/part"), "data-of=\"([^\"]+)\"");
        own.tap(
                "wind.begin",
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor));
        assertFalse(page(own, "/winding/part").contains("data-reader"), page(own, "/winding/part"));
        String others = page(laptop, "/winding/part");
        assertTrue(others.contains("<details class=\"take-over\" open"), others);
        assertTrue(others.contains("Whoever read it has their hands on the motor"), others);
    }

    @Test
    void whoever_winds_alone_keeps_the_keys_and_is_told_so() throws Exception {
        done("/attempt/move", "to", "winding");
        for (String address : new String[] {"/now", "/bench/part", "/winding/part"}) {
            assertTrue(page(own, address).contains(ALONE), address + page(own, address));
        }
        assertTrue(page(own, "/now").contains("/attempt/move"), page(own, "/now"));
        assertTrue(page(own, "/winding/part").contains("data-reader"), page(own, "/winding/part"));
        joinsAnother();
        assertFalse(page(own, "/winding/part").contains("data-reader"), "somebody is there who could tap");
    }

    @Test
    void a_winder_who_reads_as_well_keeps_the_keys() throws Exception {
        var forms = new FilledForms(laptop);
        assertEquals(
                204,
                forms.save("crew", forms.row("crew", app.names().get(winder)), Map.of("tasks", "winds | reads"))
                        .statusCode());
        name("reads", winder);
        joinsAnother();
        done("/attempt/move", "to", "winding");
        assertTrue(page(own, "/winding/part").contains(ALONE), page(own, "/winding/part"));
        assertTrue(page(own, "/winding/part").contains("data-reader"), page(own, "/winding/part"));
    }

    @Test
    void a_person_who_is_named_in_their_place_takes_the_rule_over() throws Exception {
        joinsAnother();
        String other = CalledForTests.value(
                page(laptop, "/now"), "(?s)name=\"hand-winds\">.*?<option value=\"(?!" + winder + ")([^\"]+)\"");
        name("winds", other);
        done("/attempt/move", "to", "winding");
        assertTrue(page(own, "/now").contains("/attempt/move"), page(own, "/now"));
        assertFalse(page(own, "/winding/part").contains(BOUND), page(own, "/winding/part"));
    }
}

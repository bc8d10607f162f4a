package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/**
 * Two winding places and two own attempts in different phases, one laptop and five phones, through a break with its spare and
 * a stop of the hall: after every step all pages of all devices say the same of each attempt.
 */
@Timeout(300)
class TwoThroughTroubleWebTest extends TwoPlacesDay {
    private final Map<String, Visitor> devices = new LinkedHashMap<>();
    private final List<String> story = new ArrayList<>();

    private void devices() throws Exception {
        devices.put("laptop", laptop);
        devices.put("captain", Demo.joined(app, "captain", "", 7_201));
        devices.put("reader of Curlew", reader);
        devices.put("reader of Avocet", Demo.joined(app, "helper", "", 7_202));
        devices.put("watch of Curlew", Demo.joined(app, "timekeeper", "", 7_203));
        devices.put("watch of Avocet", Demo.joined(app, "timekeeper", "", 7_204));
        take(device("watch of Curlew"), curlew);
        take(device("watch of Avocet"), avocet);
    }

    private Visitor device(String name) {
        return java.util.Objects.requireNonNull(devices.get(name));
    }

    private void take(Visitor watch, Side side) throws Exception {
        var taken = watch.form("/watch/take", Map.of("attempt", side.attempt(), "slot", "1"));
        assertEquals(200, taken.statusCode(), taken.body());
    }

    private void watch(Visitor watch, Side side, String kind, long ms) throws Exception {
        ObjectNode tap = about(side).put("slot", 1);
        saved(watch.tap(kind, ms == 0 ? tap : tap.put("ms", ms)));
    }

    private void phase(Visitor who, String wind, String phase, long ms) throws Exception {
        saved(who.tap(
                "wind.phase",
                Json.MAPPER
                        .createObjectNode()
                        .put("wind", wind)
                        .put("phase", phase)
                        .put("elapsedMs", ms)));
    }

    private void done(String address, Side side, Map<String, String> more) throws Exception {
        Map<String, String> fields = new TreeMap<>(more);
        fields.put("attempt", side.attempt());
        var answer = laptop.form(address, fields);
        assertEquals(200, answer.statusCode(), address + ": " + answer.body());
    }

    /** What all pages of all devices say of each, by figure: one value. */
    private Map<Side, Map<String, String>> said() throws Exception {
        Map<Side, Map<String, Set<String>>> values = new LinkedHashMap<>();
        for (Visitor device : devices.values()) {
            var pages = new ReadOnce(device);
            for (Side side : List.of(curlew, avocet)) {
                var ofSide = values.computeIfAbsent(side, s -> new TreeMap<>());
                LiveFigures.of(pages, side.attempt(), side.title())
                        .all()
                        .forEach((figure, byPage) -> ofSide.computeIfAbsent(figure, f -> new TreeSet<>())
                                .addAll(byPage.values()));
            }
        }
        Map<Side, Map<String, String>> one = new LinkedHashMap<>();
        values.values().forEach(figures -> figures.remove("times, watch 1")); // its own device says it otherwise
        values.forEach((side, figures) -> figures.forEach((figure, said) -> {
            assertEquals(1, said.size(), side.title() + ", " + figure + ": " + said + " after " + story);
            one.computeIfAbsent(side, s -> new TreeMap<>())
                    .put(figure, said.iterator().next());
        }));
        return one;
    }

    private void agree(String step, String curlewIs, String avocetIs) throws Exception {
        story.add(step);
        Map<Side, Map<String, String>> said = said();
        Map<String, String> one = said.getOrDefault(curlew, Map.of());
        Map<String, String> two = said.getOrDefault(avocet, Map.of());
        assertEquals(curlewIs, one.get("phase"), "Curlew after " + story);
        assertEquals(avocetIs, two.get("phase"), "Avocet after " + story);
        assertNotEquals(one.getOrDefault("motor", "none"), two.getOrDefault("motor", "no other"), story.toString());
    }

    private String motor(Side side) throws Exception {
        String tag = value(keys(side), "· motor ([^<]+)<");
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private void figuresOfBoth() throws Exception {
        Map<Side, Map<String, String>> said = said();
        said.forEach((side, figures) -> {
            for (String figure : List.of("motor", "turns limit", "torque limit", "winds and reads", "wound at")) {
                assertTrue(figures.containsKey(figure), side.title() + " says no " + figure + ": " + figures);
            }
        });
        assertEquals(POST, said.getOrDefault(curlew, Map.of()).get("wound at"));
        assertEquals(TABLE, said.getOrDefault(avocet, Map.of()).get("wound at"));
    }

    @Test
    void every_page_of_six_devices_agrees_through_a_break_and_a_stop_of_the_hall() throws Exception {
        devices();
        Visitor other = device("reader of Avocet");
        agree("both are called", "called", "called");
        figuresOfBoth();
        String broken = motor(avocet);
        String curlews = motor(curlew);
        String one = begin(reader, curlew);
        agree("Curlew is wound", "winding", "called");
        String two = begin(other, avocet);
        agree("Avocet is wound", "winding", "winding");
        figuresOfBoth();
        phase(reader, one, "stopped", 60_000);
        agree("Curlew is held", "holding", "winding");

        phase(other, two, "broke", 30_000);
        agree("Avocet's motor breaks", "holding", "broke");
        done("/attempt/people-safe", avocet, Map.of("motor", broken));
        agree("people are unhurt", "holding", "broke");
        done("/attempt/parted", avocet, Map.of("motor", broken, "place", "strand"));
        agree("somebody has looked where", "holding", "broke");
        String spare = value(keys(avocet), "data-tap=\"attempt.take-motor\"[^>]*data-motor=\"([^\"]+)\"");
        done("/attempt/take-motor", avocet, Map.of("motor", spare, "seenMotor", broken));
        assertEquals(spare, motor(avocet));
        assertNotEquals(spare, curlews);
        agree("the spare is taken", "holding", "called");

        laptop.form("/hall/stop", Map.of("stop-reason", "lights", "stop-words", ""));
        agree("the hall is stopped", "holding", "called");
        done("/attempt/run-back", curlew, Map.of("motor", curlews, "turns", "150"));
        agree("Curlew is run back", "called", "called");
        String stop = value(laptop.get("/first").body(), "name=\"stop\" value=\"([^\"]+)\"");
        assertEquals(200, laptop.form("/hall/resume", Map.of("stop", stop)).statusCode());
        agree("the hall goes on", "called", "called");
        figuresOfBoth();

        two = begin(other, avocet);
        agree("the spare is wound", "called", "winding, 2nd");
        one = begin(reader, curlew);
        agree("Curlew is wound anew", "winding, 2nd", "winding, 2nd");
        phase(other, two, "stopped", 61_000);
        watch(device("watch of Avocet"), avocet, "watch.release", 0);
        agree("Avocet flies", "winding, 2nd", "in the air");
        phase(reader, one, "stopped", 62_000);
        agree("Curlew is held again", "holding", "in the air");
        watch(device("watch of Avocet"), avocet, "watch.landing", 72_000);
        watch(device("watch of Curlew"), curlew, "watch.release", 0);
        agree("one is down", "in the air", "landed");
        watch(device("watch of Curlew"), curlew, "watch.landing", 61_000);
        agree("both are down", "landed", "landed");
        String record = laptop.get("/attempt/" + avocet.attempt()).body();
        assertEquals(3, record.split(", at Table by the door", -1).length, "both winds with their place: " + record);
    }
}

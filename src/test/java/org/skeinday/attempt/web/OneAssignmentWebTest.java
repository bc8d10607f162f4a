package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.prepare.FilledForms;

/** Two own entries of one team that share three motors: every page gives each the same ones, and none to both. */
@Timeout(60)
class OneAssignmentWebTest {
    private static final Set<String> THREE = Set.of("A3", "B2", "B5");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 81);
        share("A3 | B2 | B5");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void share(String motors) throws Exception {
        FilledForms forms = new FilledForms(laptop);
        for (String entry : List.of("Curlew", "Avocet")) {
            assertEquals(
                    204,
                    forms.save("entries", forms.row("entries", entry), Map.of("motors", motors))
                            .statusCode());
        }
    }

    /** The tag of the motor that the Bench prepares for it; empty for none. */
    private String onBench(String what) throws Exception {
        String page = laptop.get("/bench").body();
        int needed = page.indexOf(">" + what + "<");
        return needed < 0 ? "" : last(page.substring(0, needed), ">(A3|B2|B5)<");
    }

    private static String last(String html, String pattern) {
        return Pattern.compile(pattern)
                .matcher(html)
                .results()
                .map(found -> found.group(1))
                .reduce("", (a, b) -> b);
    }

    private String onDay(String title) throws Exception {
        return value(laptop.get("/day/part").body(), "<dt>" + title + "</dt><dd>([^<]*)</dd>");
    }

    /** What stands on the cards of one entry, card by card. @param label of the line */
    private List<String> onCards(String entry, String label) throws Exception {
        return Pattern.compile("(?s)<h1>" + entry + ", attempt.*?<dt>" + label + "</dt><dd>([A-Z]\\d)?")
                .matcher(laptop.get("/cards").body())
                .results()
                .map(found -> String.valueOf(found.group(1)))
                .toList();
    }

    private String entry(String name) throws Exception {
        return value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>" + name + "</option>");
    }

    private String choice(String name) throws Exception {
        return value(laptop.get("/choice/" + entry(name)).body(), "Assigned as on every page: ([^<]*)\\.<");
    }

    private void call(String name) throws Exception {
        assertEquals(
                200,
                laptop.form("/attempt/call", Map.of("entry", entry(name), "number", "1", "assigned", "yes"))
                        .statusCode());
    }

    @Test
    void now_day_bench_card_and_choice_give_each_entry_its_own_motors() throws Exception {
        String curlew = onBench("for Curlew, attempt 1");
        String spare = onBench("spare for Curlew, attempt 1");
        String avocet = onBench("for Avocet, attempt 1");
        assertEquals(THREE, new TreeSet<>(List.of(curlew, spare, avocet)), "three motors, each for one thing");
        assertEquals("", onBench("spare for Avocet, attempt 1"));
        assertEquals("motor " + curlew + ", spare " + spare, onDay("Curlew, attempt 1"));
        assertEquals("motor " + avocet + ", no spare", onDay("Avocet, attempt 1"));
        assertEquals("motor " + curlew + ", spare " + spare, choice("Curlew"));
        assertEquals("motor " + avocet + ", no spare", choice("Avocet"));
        assertEquals(curlew, onCards("Curlew", "Motor").get(0));
        assertEquals(spare, onCards("Curlew", "Spare").get(0));
        assertEquals(Set.of(curlew, spare), Set.copyOf(onCards("Curlew", "Motor")));
        assertEquals(Set.of(avocet), Set.copyOf(onCards("Avocet", "Motor")));
        assertEquals(Set.of("null"), Set.copyOf(onCards("Avocet", "Spare")), "the other's spare is not its own");
        String now = laptop.get("/now").body();
        assertEquals(curlew, value(now, "(?s)name=\"motor\".*?<option[^>]*>(\\w+) ·"));
        assertEquals(spare, value(now, "<dt>spare</dt><dd>(\\w+)</dd>"));
        assertTrue(now.matches("(?s).*>" + avocet + " · [^<]* · needed by Avocet</option>.*"), now);
    }

    @Test
    void a_call_takes_the_own_motor_and_changes_nothing_of_the_other_entry() throws Exception {
        String curlew = onBench("for Curlew, attempt 1");
        String spare = onBench("spare for Curlew, attempt 1");
        String avocet = onBench("for Avocet, attempt 1");
        call("Curlew");
        assertEquals(curlew, onBench("in Curlew, attempt 1: called"));
        assertEquals(avocet, onBench("for Avocet, attempt 1"), "the other keeps its own");
        assertEquals("motor " + curlew + ", spare " + spare, onDay("Curlew, attempt 1"));
        String winding = laptop.get("/winding/part").body();
        List<String> others = Pattern.compile("data-tap=\"attempt.take-motor\"[^>]*>([^<]*)<")
                .matcher(winding)
                .results()
                .map((MatchResult key) -> key.group(1))
                .toList();
        assertTrue(others.get(0).startsWith(spare + ", "), others.toString());
        assertFalse(others.get(0).contains("needed"), others.toString());
        assertTrue(others.get(1).startsWith(avocet + ", "), others.toString());
        assertTrue(others.get(1).endsWith(" · needed by Avocet"), others.toString());
        call("Avocet");
        assertEquals(avocet, onBench("in Avocet, attempt 1: called"));
        assertEquals(spare, onBench("for Curlew, attempt 2"), "the spare is still the first one's");
        assertEquals("motor " + avocet + ", no spare", onDay("Avocet, attempt 1"));
    }

    @Test
    void an_entry_that_no_motor_is_left_for_is_called_without_one() throws Exception {
        share("A3");
        assertEquals("motor A3, no spare", onDay("Curlew, attempt 1"));
        assertEquals("no motor that can be flown", onDay("Avocet, attempt 1"));
        call("Avocet");
        assertEquals("A3", onBench("for Curlew, attempt 1"), "nobody has taken it");
        String now = laptop.get("/now").body();
        assertTrue(now.contains("A3 · ") && now.contains("needed by Curlew"), "a person may decide otherwise: " + now);
    }
}

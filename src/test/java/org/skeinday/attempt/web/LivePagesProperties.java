package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.prepare.FilledForms;

/**
 * Whatever captain, reader and watch do, and in whatever order: all pages say the same of the attempt that is under way and of
 * the one that comes next.
 */
@Timeout(300)
class LivePagesProperties {
    private static final int ACTS = 32;

    @TempDir
    Path root;

    private App app;
    private ChanceActs acts;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        Visitor laptop = new Visitor(app.port(), "", 71);
        letStartAgain(laptop);
        acts = new ChanceActs(app, laptop);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static void letStartAgain(Visitor laptop) throws Exception {
        var forms = new FilledForms(laptop);
        forms.save(
                "rules",
                forms.row("rules", "Saltmarsh Rotor Day"),
                Map.of("if-caught", "ends", "start-again", "yes", "held-watched", "", "held-deduct", ""));
    }

    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void every_page_says_the_same_in_every_state_that_can_be_reached(long seed) throws Exception {
        var random = new SplittableRandom(seed);
        LiveFigures before = acts.figures();
        assertTrue(before.pagesWith("phase") >= 9, before.toString());
        assertTrue(before.pagesWith("motor") >= 4, before.toString());
        assertTrue(before.pagesWith("rule number") >= 4, before.toString());
        assertTrue(before.pagesWith("winds and reads") >= 3, before.toString());
        assertTrue(before.pagesWith("loads and releases") >= 3, before.toString());
        assertTrue(before.pagesWith("next motor") >= 3, before.toString());
        assertTrue(before.pagesWith("flights to come") >= 2, before.toString());
        Set<String> reached = new TreeSet<>();
        for (int i = 0; i < ACTS; i++) {
            String what = ChanceActs.next(before, random);
            boolean taken = acts.act(what, random);
            LiveFigures after = acts.figures();
            String story = "seed " + seed + ": " + acts.story();
            assertEquals(Map.of(), after.different(), story);
            if (!taken) {
                assertEquals(before.all(), after.all(), "refused, and nothing changed: " + story);
            } else if (what.equals("window")) {
                assertEquals(before.all().get("judged"), after.all().get("judged"), "judged as it was: " + story);
                assertEquals(before.all().get("official time"), after.all().get("official time"), story);
            }
            reached.add(after.said("phase", "record"));
            before = after;
        }
        assertTrue(reached.size() >= 3, reached + " only: seed " + seed + ": " + acts.story());
    }
}

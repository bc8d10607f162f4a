package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
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
import org.skeinday.steps.Cautions;

/** Cautions stand where they bite: on the pages of the phase, on the bench and on paper. */
@Timeout(120)
class PhaseCautionsWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 41);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void move(String... states) throws Exception {
        for (String to : states) {
            assertEquals(
                    200,
                    laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to))
                            .statusCode(),
                    to);
        }
    }

    /** Each of these pages says just this one of them, beside those of its list. */
    private void stands(String caution, String... pages) throws Exception {
        for (String address : pages) {
            String page = laptop.get(address).body();
            for (String one : List.of(Cautions.GOGGLES, Cautions.LOOKING_UP, Cautions.LANDED)) {
                assertEquals(one.equals(caution), page.contains(Cautions.words(one)), one + " in " + address + page);
            }
        }
    }

    @Test
    void each_phase_says_its_own() throws Exception {
        attempt = CalledForTests.callWithItsMotor(laptop);
        CalledForTests.letWind(laptop, attempt);
        stands("none of them", "/now", "/winding/part");
        String id = laptop.newId();
        String motor = CalledForTests.value(laptop.get("/winding/part").body(), "data-of=\"([^\"]+)\"");
        laptop.tapAs(
                id,
                "wind.begin",
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor));
        stands("none of them", "/winding/part");
        laptop.tap(
                "wind.phase",
                Json.MAPPER
                        .createObjectNode()
                        .put("wind", id + "-0")
                        .put("phase", "stopped")
                        .put("elapsedMs", 60_000));
        stands(Cautions.GOGGLES, "/now", "/winding/part");
        move("released");
        stands(Cautions.LOOKING_UP, "/now", "/timing/part");
        move("landed");
        stands(Cautions.LANDED, "/now", "/winding/part", "/bench");
    }

    @Test
    void what_is_run_back_asks_for_goggles_on_every_page() throws Exception {
        attempt = CalledForTests.callWithItsMotor(laptop);
        CalledForTests.letWind(laptop, attempt);
        move("winding", "holding");
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "the hook opened"));
        for (String address : List.of("/", "/bench", "/timing", "/checks")) {
            assertTrue(laptop.get(address).body().contains(Cautions.words(Cautions.GOGGLES)), address);
        }
    }

    @Test
    void the_bench_says_it_where_a_motor_is_to_be_lubricated_and_the_cards_say_all() throws Exception {
        String bench = laptop.get("/bench").body();
        assertTrue(bench.contains("data-deed=\"lubricate\""), bench);
        assertEquals(2, bench.split(Cautions.words(Cautions.DRIPPED), -1).length, "once for all rows: " + bench);
        String cards = laptop.get("/cards").body();
        for (String one : List.of(Cautions.GOGGLES, Cautions.LOOKING_UP, Cautions.LANDED, Cautions.DRIPPED)) {
            assertTrue(cards.contains(Cautions.words(one)), cards);
        }
        assertTrue(cards.contains("The venue's rules") || cards.contains("The venue&#39;s rules"), cards);
    }
}

package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;

/** A row that no rule of today would take makes a picture, a forecast or advice fail: pages go on without it. */
@Timeout(120)
class FaultyFigureWebTest {
    private static final List<String> WORKED_ON = List.of(
            "/",
            "/now",
            "/winding",
            "/winding/part",
            "/bench",
            "/bench/wall",
            "/timing",
            "/day",
            "/checks",
            "/results",
            "/desk",
            "/audit",
            "/hall");

    /** One after the other, each on top of the one before. */
    private static final List<String> DAMAGES =
            List.of("update motor_batch set k_inch_gram = 5", "update contest_station set counter = 'abacus'");

    @TempDir
    Path root;

    private int asked;

    @Test
    void figures_that_cannot_be_used_take_no_page_down_that_people_work_on() throws Exception {
        try (var house = new House(root.resolve("day"))) {
            Visitor captain = house.joined("captain");
            for (String damage : DAMAGES) {
                damage(house, damage);
                for (String path : WORKED_ON) {
                    var answer = captain.get(anew(path));
                    assertEquals(200, answer.statusCode(), damage + " " + path + " " + answer.body());
                }
            }
            String bench = captain.get(anew("/bench")).body();
            assertTrue(bench.contains("What the attempts need cannot be shown just now"), bench);
            String day = captain.get("/day").body();
            assertTrue(day.contains("The plan of the day cannot be shown just now"), day);
        }
    }

    /** What looks alike for many is kept for a while: under an address of its own it is made for this asking. */
    private String anew(String path) {
        return path + "?attempt=none-" + ++asked;
    }

    private static void damage(House house, String damage) throws Exception {
        String url = "jdbc:h2:file:" + house.folder.toAbsolutePath().resolve("skeinday");
        try (var h2 = DriverManager.getConnection(url, "sa", "");
                var statement = h2.createStatement()) {
            assertTrue(statement.executeUpdate(damage) > 0, "nothing was there to damage: " + damage);
        }
    }
}

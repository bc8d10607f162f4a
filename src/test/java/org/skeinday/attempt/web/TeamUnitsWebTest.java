package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.DayRows;
import org.skeinday.prepare.Sheet;

/** Units are the team's: chosen once, the same on every device, and under every field. */
@Timeout(60)
class TeamUnitsWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor phone;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 91);
        phone = Demo.joined(app, "helper", "", 92);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    @Test
    void what_one_chooses_all_devices_and_papers_show_also_after_a_rebuild() throws Exception {
        assertTrue(phone.get("/bench").body().contains(" mm, "));
        assertEquals(403, phone.form("/units", Map.of("units", "inch")).statusCode());
        assertEquals(422, laptop.form("/units", Map.of("units", "cubits")).statusCode());
        assertEquals(204, laptop.form("/units", Map.of("units", "inch")).statusCode());
        everyPageIsInInches();
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 93);
        phone = laptop;
        everyPageIsInInches();
    }

    private void everyPageIsInInches() throws Exception {
        for (String page : List.of("/bench", "/tags", "/cards", "/now")) {
            Visitor who = page.equals("/bench") ? phone : laptop;
            String body = who.get(page).body();
            assertTrue(Pattern.compile("\\d\\.\\d in\\b").matcher(body).find(), page);
            assertFalse(Pattern.compile("\\d mm\\b").matcher(body).find(), page + " still says millimetres");
        }
    }

    /** The demo's meter is marked in in·ozf: so are all torques, though lengths are in millimetres. */
    @Test
    void torques_are_in_the_meter_s_own_unit_whatever_lengths_are_in() throws Exception {
        assertTrue(phone.get("/practice").body().contains("without a unit: in·ozf"));
        laptop.form("/units", Map.of("units", "inch"));
        assertTrue(phone.get("/practice").body().contains("without a unit: in·ozf"));
    }

    @Test
    void every_form_shows_under_each_quantity_the_unit_in_which_it_takes_a_bare_number() throws Exception {
        for (String units : List.of("metric", "inch")) {
            laptop.form("/units", Map.of("units", units));
            for (Sheet sheet : Sheet.values()) {
                String form = laptop.get("/prepare/" + sheet.path() + "/new").body();
                for (Column column : DayRows.columns(sheet.file())) {
                    boolean quantity = List.of(Column.Kind.LENGTH, Column.Kind.MASS, Column.Kind.TORQUE)
                            .contains(column.kind());
                    String name = column.name().replace(' ', '-');
                    if (quantity && form.contains("id=\"f-" + name + "\"")) {
                        Matcher under = Pattern.compile("(?s)id=\"hint-" + name
                                        + "\">[^<]*<span class=\"unit-under\">[^<]*without a unit: ([^<]+)</span><input type=\"hidden\""
                                        + " name=\"unit-" + name + "\" value=\"([^\"]+)\">")
                                .matcher(form);
                        assertTrue(under.find(), sheet + " " + name + " in " + units);
                        assertEquals(under.group(1), under.group(2).replace('-', '·'));
                    }
                }
            }
        }
    }

    @Test
    void a_bare_torque_on_a_card_and_at_practice_is_in_the_unit_of_its_field() throws Exception {
        laptop.form("/practice/begin", Map.of());
        var flight = Map.of(
                "model",
                "Reed One",
                "motor",
                "A1",
                "launch-torque",
                "0.35",
                "unit-launch-torque",
                "in-ozf",
                "time",
                "1:44.2",
                "valid",
                "yes",
                "earlier",
                "yes");
        var saved = laptop.form("/practice", flight);
        assertEquals(200, saved.statusCode());
        assertTrue(saved.body().contains("0.35 in-ozf"), saved.body());
        String card = laptop.get("/key-in").body();
        assertTrue(card.contains("Peak torque, in·ozf") && card.contains("name=\"unit-peak-torque\""), card);
    }
}

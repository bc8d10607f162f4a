package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
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
import org.skeinday.exchange.XlsxBook;

/** A history of somebody's own columns, and workbooks in and out. */
@Timeout(60)
class HistoryWebTest {
    private static final String OWN = "Date,Aircraft,Rubber,Winds,Gear,Duration,Remarks\n"
            + "2026-04-01 18:00,Reed One,A1,200,10,1:35.2,from the old notebook\n"
            + "2026-04-01 18:20,Reed Two,A2,210,10,1:41.0,\n";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 61);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private HttpResponse<String> open(String name, byte[] bytes) throws Exception {
        return laptop.upload("/import/history/open", name, bytes, Map.of("file", "flights.csv"));
    }

    private static Map<String, String> form(String text) {
        Map<String, String> form = new HashMap<>(Map.of("file", "flights.csv", "text", text));
        String[] meanings = {"flown", "model", "motor", "crank turns", "ratio", "time", "note"};
        for (int i = 0; i < meanings.length; i++) {
            form.put("meaning-" + i, meanings[i]);
            form.put("unit-" + i, "");
        }
        form.put("same-event", "Saltmarsh Practice Evening");
        form.put("same-valid", "yes");
        return form;
    }

    @Test
    void columns_are_guessed_and_what_is_missing_is_said() throws Exception {
        HttpResponse<String> opened = open("notebook.csv", OWN.getBytes(StandardCharsets.UTF_8));
        assertEquals(200, opened.statusCode(), opened.body());
        for (String guess : new String[] {"flown", "model", "motor", "crank turns", "ratio", "time", "note"}) {
            assertTrue(
                    opened.body().contains("<option value=\"" + guess + "\" selected>"), guess + " " + opened.body());
        }
        assertTrue(
                opened.body().contains("Row 2, event: this is empty and there is not just one event"), opened.body());
        assertTrue(opened.body().contains("from the old notebook"), "for example");
        byte[] book = XlsxBook.write(Map.of("notebook.csv", OWN));
        assertTrue(open("notebook.xlsx", book).body().contains("<option value=\"motor\" selected>"));
    }

    @Test
    void nothing_is_taken_until_every_cell_is_right_and_then_all_of_it() throws Exception {
        String wrong = OWN.replace("Reed Two", "Reed Tow").replace("1:41.0", "1:61");
        HttpResponse<String> refused = laptop.form("/import/history/take", form(wrong));
        assertEquals(422, refused.statusCode());
        assertTrue(
                refused.body().contains("Row 3, column &#34;Aircraft&#34;")
                        || refused.body().contains("Row 3, column \"Aircraft\""),
                refused.body());
        assertTrue(refused.body().contains("Nothing was taken."), refused.body());
        assertFalse(laptop.get("/prepare/flights").body().contains("from the old notebook"));
        HttpResponse<String> looked = laptop.form("/import/history/look", form(OWN));
        assertEquals(200, looked.statusCode(), looked.body());
        assertTrue(looked.body().contains("2 rows can be taken in."), looked.body());
        HttpResponse<String> taken = laptop.form("/import/history/take", form(OWN));
        assertEquals(200, taken.statusCode(), taken.body());
        assertTrue(taken.body().contains("2 rows are in the record now."), taken.body());
        assertTrue(laptop.get("/prepare/flights").body().contains("from the old notebook"));
    }

    /** One flight each minute. */
    private static String history(int flights) {
        String[] lines = OWN.split("\n");
        var text = new StringBuilder(lines[0]).append('\n');
        for (int i = 0; i < flights; i++) {
            String moment =
                    LocalDateTime.of(2026, 3, 1, 8, 0).plusMinutes(i).toString().replace('T', ' ');
            text.append(lines[1].replace("2026-04-01 18:00", moment)).append('\n');
        }
        return text.toString();
    }

    @Test
    void of_many_wrong_cells_the_first_twenty_are_named_and_the_others_counted() throws Exception {
        String text = history(300).replace("Reed One", "Reed Own");
        for (String path : new String[] {"/import/history/look", "/import/history/take"}) {
            String body = laptop.form(path, form(text)).body();
            assertEquals(21, body.split("<li>", -1).length - 1, body);
            assertTrue(body.contains("300 cells are not right yet"), body);
            assertTrue(body.contains("<li>and 280 more</li>"), body);
        }
    }

    @Test
    void a_long_history_says_how_far_it_is_and_then_that_it_is_in() throws Exception {
        Map<String, String> form = new HashMap<>(form(history(3_000)));
        form.put("act", laptop.newId());
        String told = laptop.form("/import/history/take", form).body();
        int asked = 0;
        while (told.contains("Taking them in")) {
            assertTrue(told.contains("hx-get=\"/import/told?act=" + form.get("act")), told);
            assertTrue(told.contains("Every page can be read meanwhile"), told);
            assertFalse(told.contains("Send it again"), told);
            Thread.sleep(100);
            asked++;
            told = laptop.get("/import/told?act=" + form.get("act")).body();
        }
        System.out.println("Asked again for a history of 3,000 flights: " + asked + " times");
        assertTrue(told.contains("in the record now"), told);
        assertTrue(laptop.form("/import/history/take", form).body().contains("3000 rows are in the record now"));
    }

    /** The page sends the spreadsheet back as a field of its form. */
    @Test
    void a_spreadsheet_as_long_as_files_may_be_comes_back_with_its_form() throws Exception {
        String text = history(10_000);
        assertTrue(text.length() > 500_000);
        HttpResponse<String> looked = laptop.upload("/import/history/look", "left.csv", new byte[0], form(text));
        assertEquals(200, looked.statusCode(), looked.body().substring(0, 300));
        assertTrue(looked.body().contains("10000 rows can be taken in."));
    }

    @Test
    void bad_input_is_refused_in_words_and_a_helper_has_no_such_page() throws Exception {
        assertEquals(422, open("x.xlsx", new byte[] {1, 2, 3}).statusCode());
        assertEquals(422, open("x.csv", new byte[0]).statusCode());
        assertEquals(
                422,
                laptop.upload(
                                "/import/history/open",
                                "a.csv",
                                OWN.getBytes(StandardCharsets.UTF_8),
                                Map.of("file", "people.csv"))
                        .statusCode());
        assertEquals(
                400,
                laptop.form("/import/history/look", Map.of("file", "flights.csv"))
                        .statusCode());
        Visitor helper = Demo.joined(app, "helper", "", 62);
        assertEquals(403, helper.get("/import/history").statusCode());
        assertEquals(403, helper.get("/export.xlsx").statusCode());
        assertEquals(403, helper.form("/import/history/take", form(OWN)).statusCode());
    }

    @Test
    void a_workbook_goes_out_and_comes_in_again_and_a_broken_one_is_refused() throws Exception {
        byte[] book = laptop.bytes("/export.xlsx");
        assertTrue(XlsxBook.read("skeinday.xlsx", book).texts().containsKey("motors.csv"));
        try (App other = Demo.startEmpty(root.resolve("other"))) {
            Visitor first = new Visitor(other.port(), "", 63);
            HttpResponse<String> looked = first.upload("/import/look", "skeinday.xlsx", book, Map.of());
            assertEquals(200, looked.statusCode(), looked.body());
            assertTrue(looked.body().contains("These files can be taken in."), looked.body());
            HttpResponse<String> taken = first.upload("/import/take", "skeinday.xlsx", book, Map.of());
            assertTrue(taken.body().contains("All of it is in the record now."), taken.body());
            assertTrue(first.get("/prepare/motors").body().contains("A1"));
            HttpResponse<String> broken = first.upload("/import/look", "a.xlsx", new byte[] {9, 9}, Map.of());
            assertEquals(422, broken.statusCode());
            assertTrue(broken.body().contains("no workbook that can be read"), broken.body());
        }
    }
}

package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.cli.HostileDay;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Whatever somebody is called, it is a name: on every page, in every file, and in what the record takes in. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(120)
class HostileNamesWebTest {
    /** Each would be a tag or an attribute of its own, had it not been escaped. */
    private static final Pattern ALIVE =
            Pattern.compile("<script>window|<img src=x|<svg onload|<i>B2|<b>&amp;</b>|<[a-z][^<>]*onfocus=\"window");

    @TempDir
    static Path root;

    private House house;

    @BeforeAll
    void start() throws Exception {
        house = House.asItIs(HostileDay.into(root.resolve("day")));
    }

    @AfterAll
    void stop() throws Exception {
        house.close();
    }

    @Test
    void every_page_shows_names_as_text() throws Exception {
        Crawl crawl = Crawl.of(house, house.laptop);
        assertEquals(List.of(), crawl.troubles());
        List<String> alive = new ArrayList<>();
        int shown = 0;
        for (Map.Entry<String, HttpResponse<String>> page : crawl.pages().entrySet()) {
            String type = page.getValue().headers().firstValue("Content-Type").orElse("");
            if (type.startsWith("text/html")) {
                shown += page.getValue().body().contains("&lt;script&gt;window.ran=1") ? 1 : 0;
                if (ALIVE.matcher(page.getValue().body()).find()) {
                    alive.add(page.getKey());
                }
            } else {
                assertTrue(
                        page.getValue()
                                .headers()
                                .firstValue("X-Content-Type-Options")
                                .isPresent(),
                        page.getKey());
            }
        }
        assertEquals(List.of(), alive);
        assertTrue(shown > 10, "pages that show the name: " + shown);
    }

    @Test
    void files_hold_names_that_no_spreadsheet_computes() throws Exception {
        int cells = 0;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(house.laptop.bytes("/export.zip")))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String text = new String(zip.readAllBytes(), StandardCharsets.UTF_8);
                cells += text.split("HYPERLINK", -1).length - 1;
                for (String formula : List.of("=HYPERLINK", "=A3", "@SUM", "-Tomek", "+Sedge")) {
                    assertFalse(
                            Pattern.compile("(?m)(^|,|\")" + Pattern.quote(formula))
                                    .matcher(text)
                                    .find(),
                            formula + " begins a cell of " + entry.getName());
                }
            }
        }
        assertTrue(cells > 0);
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(house.laptop.bytes("/export.xlsx")))) {
            book.forEach(sheet -> sheet.forEach(row -> row.forEach(cell -> assertFalse(
                    cell.getCellType() == CellType.FORMULA, sheet.getSheetName() + " " + cell.getAddress()))));
        }
    }

    @Test
    void what_is_too_long_or_cannot_be_printed_is_refused_with_what_would_be_right() throws Exception {
        FilledForms forms = new FilledForms(house.laptop);
        String before = house.head();
        for (String kind : List.of("events", "models", "crew", "batches")) {
            Map<String, String> shown = forms.shown("/prepare/" + kind + "/new");
            String name = shown.containsKey("name") ? "name" : kind.equals("models") ? "model" : "batch";
            HttpResponse<String> longer = forms.refused(kind, Map.of(name, "x".repeat(10_000)));
            assertEquals(422, longer.statusCode(), kind);
            assertTrue(
                    Pattern.compile("he text has 10000 characters[^<]*at most \\d+")
                            .matcher(longer.body())
                            .find(),
                    kind + ": " + longer.body().replaceAll("x{20,}", "…"));
            for (String strange : List.of("a\u0000b", "\u202egnp.exe", "a\u0007", "\u2066x")) {
                HttpResponse<String> refused = forms.refused(kind, Map.of(name, strange));
                assertEquals(422, refused.statusCode(), kind + " " + strange);
                assertTrue(refused.body().contains("cannot be seen or printed"), kind + ": " + refused.body());
            }
        }
        HttpResponse<String> reason =
                house.laptop.form("/attempt/give-up", Map.of("attempt", house.attempt, "reason", "x".repeat(10_000)));
        assertTrue(reason.body().contains("at most 400 characters, this one has 10000"), reason.body());
        HttpResponse<String> bell =
                house.laptop.form("/attempt/give-up", Map.of("attempt", house.attempt, "reason", "a\u0007"));
        assertTrue(bell.body().contains("(U+0007): type it without"), bell.body());
        assertTrue(house.laptop
                .tap("step.skip", Json.MAPPER.createObjectNode().put("reason", "\u202egnp.exe"))
                .path("reason")
                .asText()
                .contains("U+202E"));
        assertEquals(before, house.head());
    }

    @Test
    void a_stream_carries_no_names_at_all() throws Exception {
        String flown = landed();
        try (var socket = new java.net.Socket("127.0.0.1", house.app.port())) {
            socket.getOutputStream()
                    .write(("GET /live?topics=attempts,%3Cscript%3E HTTP/1.1\r\nHost: localhost:" + house.app.port()
                                    + "\r\nAccept: text/event-stream\r\n\r\n")
                            .getBytes(StandardCharsets.UTF_8));
            var in = new java.io.BufferedReader(
                    new java.io.InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            StringBuilder all = new StringBuilder();
            while (!all.toString().contains("event: resync")) {
                all.append(in.readLine()).append('\n');
            }
            house.laptop.form("/attempt/protest", Map.of());
            var protested = house.laptop.form(
                    "/attempt/" + flown + "/protest", Map.of("words", "<script>window.ran=1</script>"));
            assertEquals(200, protested.statusCode(), protested.body());
            while (!all.toString().contains("\"topics\":[\"attempts\"")) { // or more, where hints were gathered
                all.append(in.readLine());
            }
            assertFalse(all.toString().contains("<script>") || all.toString().contains("ran"), all.toString());
        }
    }

    /** An attempt of another entry than the one that is called, once it has landed. */
    private String landed() throws Exception {
        String now = house.laptop.get("/now").body();
        String entry = Pattern.compile("name=\"entry\" value=\"([^\"]+)\"")
                .matcher(now)
                .results()
                .map(found -> found.group(1))
                .reduce((first, last) -> last)
                .orElseThrow();
        var called = house.laptop.form("/attempt/call", Map.of("entry", entry));
        assertEquals(200, called.statusCode(), called.body());
        String attempt = CalledForTests.value(
                house.laptop.get("/results").body(), "(?s).*href=\"/attempt/([^\"]+)\"[^>]*>called<");
        for (String to : List.of("released", "landed")) {
            var moved = house.laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
            assertEquals(200, moved.statusCode(), moved.body());
        }
        return attempt;
    }
}

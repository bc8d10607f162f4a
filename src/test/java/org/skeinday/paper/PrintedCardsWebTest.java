package org.skeinday.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Pace;
import org.skeinday.prepare.FilledForms;

/** A printed card says of when it is, and the page that printed it says what has changed since. */
@Timeout(180)
class PrintedCardsWebTest {
    private static final String RIGHT = "as it is now";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        Demo.into(root.resolve("day"));
        again(91);
    }

    /** With the waits of a real day: for all cards all motors are ranked, which a busy machine may take its time for. */
    private void again(long seed) throws Exception {
        var settings = new App.Settings(root.resolve("day"), 0, false, Pace.normal());
        app = App.start(settings, Clock.systemDefaultZone(), new SecureRandom());
        laptop = new Visitor(app.port(), "", seed);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String print() throws Exception {
        HttpResponse<String> answer = laptop.form("/cards/print", Map.of());
        assertEquals(200, answer.statusCode(), answer.body());
        return answer.body();
    }

    /** What the list says of one card. */
    private String onPaper(String title) throws Exception {
        return value(
                        laptop.get("/cards/printed").body(),
                        "(?s)>" + title + ", printed \\d\\d:\\d\\d:\\d\\d: (.*?)</li>")
                .replaceAll("<[^>]+>", "")
                .strip();
    }

    private void motorsOfCurlew(String motors) throws Exception {
        FilledForms forms = new FilledForms(laptop);
        assertEquals(
                204,
                forms.save("entries", forms.row("entries", "Curlew"), Map.of("motors", motors))
                        .statusCode());
    }

    private String entry(String name) throws Exception {
        return new FilledForms(laptop).row("entries", name).replaceFirst(".*/", "");
    }

    @Test
    void the_list_says_of_each_card_whether_it_still_holds_and_in_what_it_does_not() throws Exception {
        assertFalse(laptop.get("/cards").body().contains("On paper"), "nothing was printed");
        String printed = print();
        assertTrue(printed.contains("data-print-now"), "the page prints what has come");
        assertTrue(printed.matches("(?s).*As of \\d\\d:\\d\\d:\\d\\d\\..*"), "each card has its moment");
        assertFalse(laptop.get("/cards").body().contains("data-print-now"), "once");
        assertEquals(RIGHT, onPaper("Curlew, attempt 1"));
        assertEquals(RIGHT, onPaper("Avocet, attempt 3"));
        motorsOfCurlew("A3 | B2");
        assertTrue(
                onPaper("Curlew, attempt 1")
                        .startsWith("out of date, changed since: motor (C1, use 1 → A3, use 1), spare ("),
                onPaper("Curlew, attempt 1"));
        assertEquals(RIGHT, onPaper("Avocet, attempt 1"), "nothing of it has changed");
        print();
        assertEquals(RIGHT, onPaper("Curlew, attempt 1"), "the new paper is right");
        new FilledForms(laptop).window("Avocet", Clock.systemDefaultZone(), 30, 35);
        assertEquals("out of date, changed since: latest start", onPaper("Avocet, attempt 1"));
        assertEquals(RIGHT, onPaper("Curlew, attempt 1"));
    }

    @Test
    void people_are_compared_without_their_names_in_the_record_and_a_restart_forgets_nothing() throws Exception {
        print();
        String people = laptop.get("/now").body();
        String other =
                value(people, "(?s)name=\"hand-winds\">.*?<option value=\"([^\"]+)\"(?![^>]*selected)[^>]*>(?!nobody)");
        HttpResponse<String> named = laptop.form(
                "/attempt/name-hands",
                Map.of(
                        "entry", entry("Curlew"),
                        "number", "1",
                        "hand-winds", other,
                        "hand-reads", "",
                        "hand-loads", "",
                        "hand-releases", ""));
        assertEquals(200, named.statusCode(), named.body());
        String changed = onPaper("Curlew, attempt 1");
        assertTrue(changed.startsWith("out of date, changed since: winds"), changed);
        assertEquals(RIGHT, onPaper("Curlew, attempt 2"), "said for the first one alone");
        String journal = Files.readString(root.resolve("day").resolve("journal.jsonl"));
        String kept = journal.lines()
                .filter(line -> line.contains("card.printed"))
                .findFirst()
                .orElse("");
        assertTrue(kept.contains("Motor"), kept);
        assertFalse(kept.contains("Tomek"), "names can be erased: " + kept);
        app.close();
        again(92);
        assertEquals(changed, onPaper("Curlew, attempt 1"));
    }

    @Test
    void once_it_is_called_the_paper_is_compared_by_its_motor_and_what_is_over_is_out_of_date_for_nobody()
            throws Exception {
        print();
        FilledForms forms = new FilledForms(laptop);
        String motor = forms.row("motors", "B2").replaceFirst(".*/", "");
        laptop.form("/attempt/call", Map.of("entry", entry("Curlew"), "number", "1", "motor", motor));
        assertEquals("out of date, changed since: motor (C1, use 1 → B2)", onPaper("Curlew, attempt 1"));
        assertEquals(RIGHT, onPaper("Avocet, attempt 1"));
        String attempt = value(laptop.get("/now").body(), "name=\"attempt\" value=\"([^\"]+)\"");
        laptop.form(
                "/attempt/take-motor",
                Map.of(
                        "attempt", attempt,
                        "motor", forms.row("motors", "C1").replaceFirst(".*/", ""),
                        "seenMotor", motor));
        assertEquals(RIGHT, onPaper("Curlew, attempt 1"), "as the paper has it");
    }
}

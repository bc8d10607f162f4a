package org.skeinday.steps.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** The list before winding: its order, and what a coach can not word away. */
class BeforeWindingWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 75);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    @Test
    void the_checks_stand_in_their_order_on_the_page_with_the_line_last() throws Exception {
        CalledForTests.callOnly(laptop);
        String attempt = CalledForTests.value(laptop.get("/now").body(), "name=\"attempt\" value=\"([^\"]+)\"");
        String page =
                laptop.get("/checks?list=before-winding&subject=" + attempt).body();
        var places = Pattern.compile("id=\"item-([^\"]+)\"")
                .matcher(page)
                .results()
                .map(found -> found.group(1))
                .toList();
        assertEquals(
                List.of(
                        "adult",
                        "motor",
                        "direction",
                        "ratio",
                        "mount",
                        "rings",
                        "model-away",
                        "eye-protection",
                        "line"),
                places);
        assertTrue(page.contains("Nobody but the winder in line, face beside it and not behind"), page);
    }

    @Test
    void the_line_is_not_worded_away() throws Exception {
        Map<String, String> form = beforeWinding();
        form.put("text8", "");
        says(422, "as the last critical item", laptop.form("/checks/lists/before-winding", form));
        form.put("text8", "Nobody in line");
        form.put("critical8", "no");
        says(422, "as the last critical item", laptop.form("/checks/lists/before-winding", form));
        form.put("critical8", "yes");
        assertEquals(204, laptop.form("/checks/lists/before-winding", form).statusCode());
    }

    /** The form of the list, as it is shown. */
    private Map<String, String> beforeWinding() throws Exception {
        String page = laptop.get("/checks/lists/before-winding").body();
        Map<String, String> form = new HashMap<>(Map.of(
                "seen", CalledForTests.value(page, "name=\"seen\" value=\"([^\"]+)\""), "way", "do-then-confirm"));
        form.put("title", "Before we wind");
        form.put("next", "Next: read before loading aloud.");
        for (int i = 0; i < 9; i++) {
            form.put("id" + i, CalledForTests.value(page, "name=\"id" + i + "\" value=\"([^\"]+)\""));
            form.put("text" + i, "Item " + i);
            form.put("reason" + i, "It is asked for.");
            form.put("answer" + i, "ok");
            form.put("critical" + i, "yes");
        }
        return form;
    }
}

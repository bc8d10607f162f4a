package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.fault.CalledForTests;

/** What is done at the laptop for who started the program by a double click and saw no window of its own. */
class LaptopWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 55);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    @Test
    void a_new_pin_is_told_once_and_opens_what_the_old_one_did() throws Exception {
        String first = pin();
        Demo.joined(app, "coach", first, 56);
        String second = pin();
        Demo.joined(app, "coach", second, 57);
        String token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
        var old = new Visitor(app.port(), "", 58)
                .form("/join", Map.of("token", token, "role", "coach", "person", "", "pin", first));
        assertEquals(422, old.statusCode(), "the old one opens nothing");
        assertFalse(laptop.get("/devices").body().contains(second), "told once");
    }

    private String pin() throws Exception {
        var told = laptop.form("/laptop/pin", Map.of());
        assertEquals(200, told.statusCode(), told.body());
        return CalledForTests.value(told.body(), "PIN is now ([0-9]{6})");
    }

    @Test
    void the_coach_stops_the_program_at_the_laptop_and_nobody_elsewhere() throws Exception {
        var stopped = new CountDownLatch(1);
        app.onStop(stopped::countDown);
        Visitor captain = Demo.joined(app, "captain", "", 59);
        assertEquals(403, captain.form("/laptop/stop", Map.of()).statusCode());
        assertEquals(403, captain.form("/laptop/pin", Map.of()).statusCode());
        laptop.form("/laptop/lend", Map.of());
        assertEquals(403, laptop.form("/laptop/stop", Map.of()).statusCode(), "lent");
        assertEquals(1, stopped.getCount());
        laptop.form("/laptop/back", Map.of("pin", app.renewPin()));
        var said = laptop.form("/laptop/stop", Map.of());
        assertTrue(said.body().contains("Skeinday is stopped"), said.body());
        assertTrue(stopped.await(20, TimeUnit.SECONDS), "stopped");
    }
}

package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Server;

/** What a mishap leaves behind: a number to ask for on the page, no secret and nobody's name in the log. */
@Timeout(60)
class LogsWebTest {
    @TempDir
    Path root;

    @Test
    void an_error_shows_its_number_and_the_log_holds_no_secret_and_no_name() throws Exception {
        Path folder = root.resolve("day");
        List<String> secrets = new ArrayList<>();
        String reference;
        try (App app = Demo.startFirst(folder)) {
            secrets.add(app.newPin());
            secrets.add(app.joinLink().replaceFirst(".*#", ""));
            secrets.addAll(app.names().values());
            Visitor laptop = new Visitor(app.port(), "", 280);
            HttpResponse<String> joined = laptop.form(
                    "/join",
                    Map.of(
                            "token",
                            secrets.get(1),
                            "role",
                            "coach",
                            "pin",
                            app.newPin(),
                            "person",
                            Demo.person(app, "Oda")));
            String cookie =
                    joined.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
            secrets.add(cookie.replaceFirst(".*=", ""));
            Visitor coach = new Visitor(app.port(), cookie, 281);
            coach.form("/join", Map.of("role", "coach", "pin", "wrong-" + app.newPin(), "person", "Mattis"));
            coach.form("/practice", Map.of("note", "Mattis let go", "pilot", "Oda"));
            coach.get("/search?q=Mattis");
            coach.get("/nowhere/Mattis");
            coach.post("/taps", "{\"Mattis\"");
            reference = broken(app);
        }
        String log = log(folder);
        assertTrue(log.contains(reference), "the number on the page " + reference + " is in the log: " + log);
        for (String secret : secrets) {
            assertFalse(log.contains(secret), "'" + secret + "' in " + log);
        }
    }

    /** A page with a fault, in the same program and so with the same log. @return the number that the page shows */
    private static String broken(App app) throws Exception {
        var page = new Page(Page.precompiled(), List.of(), Pace.normal(), UnaryOperator.identity());
        var settings = new Server.Settings("127.0.0.1", 0, Set::of, () -> "0a1b2c3d", Pace.normal());
        Server server = Server.start(
                settings,
                token -> Optional.empty(),
                page,
                routes -> routes.get("/of/{person}", Role.VIEWER, context -> {
                    throw new IllegalStateException("typed by " + context.pathParam("person") + ": " + app.newPin());
                }));
        try {
            HttpResponse<String> answer = new Visitor(server.port(), "", 282).get("/of/Mattis?pin=" + app.newPin());
            assertEquals(500, answer.statusCode(), answer.body());
            for (String detail : List.of("Mattis", app.newPin(), "Exception", "\tat ", "org.skeinday")) {
                assertFalse(answer.body().contains(detail), answer.body());
            }
            Matcher number = Pattern.compile("Reference ([0-9a-f]{8})").matcher(answer.body());
            assertTrue(number.find(), answer.body());
            return number.group(1);
        } finally {
            server.close();
        }
    }

    private static String log(Path folder) throws Exception {
        return Files.readString(folder.resolve("logs/skeinday.log"), StandardCharsets.UTF_8);
    }
}

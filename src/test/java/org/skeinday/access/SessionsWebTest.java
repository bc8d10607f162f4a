package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.CodeOfDay;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** Whose a token is, and until when. */
@Timeout(30)
class SessionsWebTest {
    private static final String NUMBER = "ab".repeat(16);

    @TempDir
    Path root;

    private long seeds = 2700;
    private App app;
    private String code;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 270);
        code = CodeOfDay.handedOut(app.port());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private HttpResponse<String> join(String cookie, String role, Map<String, String> more) throws Exception {
        String token = app.joinLink().replaceFirst(".*#", "");
        Map<String, String> form =
                new HashMap<>(Map.of("token", token, "code", code, "role", role, "person", "", "pin", Demo.PIN));
        form.putAll(more);
        return device(cookie).form("/join", form);
    }

    private String joined(String cookie, String role, Map<String, String> more) throws Exception {
        HttpResponse<String> answer = join(cookie, role, more);
        assertEquals(204, answer.statusCode(), answer.body());
        return answer.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
    }

    private Visitor device(String cookie) {
        return new Visitor(app.port(), cookie, ++seeds);
    }

    private String who(String cookie) throws Exception {
        Matcher who = Pattern.compile("name=\"who\" content=\"([^\"]*)\"")
                .matcher(device(cookie).get("/").body());
        assertTrue(who.find());
        return who.group(1);
    }

    private int devices() throws Exception {
        return laptop.get("/devices/part").body().split("/end\"", -1).length - 1;
    }

    @Test
    void a_cookie_is_kept_from_scripts_and_other_sites() throws Exception {
        String cookie =
                join("", "helper", Map.of()).headers().firstValue("Set-Cookie").orElseThrow();
        assertTrue(cookie.matches("skeinday=[0-9a-f]{32};.*"), cookie);
        for (String flag : new String[] {"httponly", "samesite=lax", "path=/"}) {
            assertTrue(cookie.toLowerCase(Locale.ROOT).contains(flag), flag + " in " + cookie);
        }
        assertFalse(cookie.toLowerCase(Locale.ROOT).contains("domain="), "of this host only: " + cookie);
    }

    @Test
    void another_role_brings_another_token_and_the_one_before_ends_with_its_first_use() throws Exception {
        String first = joined("", "helper", Map.of());
        assertEquals("helper", who(first));
        String second = joined(first, "coach", Map.of());
        assertNotEquals(first, second);
        assertEquals(
                "helper", who(first), "what was asked for is not given to the old token: it may be known to others");
        assertEquals("coach", who(second));
        assertEquals("this laptop", who(first), "nobody any more: on this machine it is the laptop");
        assertEquals(1, devices());
    }

    @Test
    void fewer_rights_hold_at_once_and_for_the_old_token_too() throws Exception {
        String first = joined("", "coach", Map.of());
        joined(first, "viewer", Map.of());
        assertEquals("viewer", who(first));
    }

    @Test
    void a_first_joining_whose_answer_was_lost_makes_no_second_device() throws Exception {
        String lost = joined("", "helper", Map.of("act", NUMBER));
        String second = joined("", "timekeeper", Map.of("act", NUMBER));
        assertEquals(1, devices());
        assertEquals("timekeeper", who(second));
        assertEquals("this laptop", who(lost), "the lost one was never known to anybody");
        String other = joined("", "helper", Map.of("act", NUMBER));
        assertEquals(2, devices(), "once it was heard, its number opens nothing any more");
        assertEquals("helper", who(other));
        assertEquals("timekeeper", who(second));
    }

    @Test
    void a_number_that_is_known_to_others_takes_no_device_over_after_a_restart() throws Exception {
        String first = joined("", "captain", Map.of("act", NUMBER));
        String journal = Files.readString(root.resolve("day/journal.jsonl"));
        assertFalse(journal.contains(NUMBER), "only its hash is kept");
        app.close();
        app = Demo.startEmpty(root.resolve("day"));
        assertEquals("captain", who(first));
    }

    @Test
    void ending_a_device_closes_its_open_stream_at_once_and_no_other() throws Exception {
        String ended = joined("", "helper", Map.of());
        String stays = joined("", "helper", Map.of());
        try (Socket one = stream(ended);
                Socket other = stream(stays)) {
            BufferedReader of = reader(one);
            until(of, "event: resync");
            until(reader(other), "event: resync");
            assertEquals(2, app.openStreams());
            String id = CalledId.of(device(ended));
            assertEquals(204, laptop.form("/devices/" + id + "/end", Map.of()).statusCode());
            while (of.readLine() != null) {
                // what was on its way
            }
            assertEquals(1, app.openStreams());
        }
    }

    @Test
    void a_change_of_role_ends_the_streams_that_had_the_old_rights() throws Exception {
        String first = joined("", "captain", Map.of());
        try (Socket one = stream(first)) {
            BufferedReader in = reader(one);
            until(in, "event: resync");
            joined(first, "viewer", Map.of());
            while (in.readLine() != null) {
                // ends by itself
            }
        }
    }

    @Test
    void a_captain_does_not_end_a_coachs_device() throws Exception {
        String coach = joined("", "coach", Map.of());
        String captain = joined("", "captain", Map.of());
        String id = CalledId.of(device(coach));
        HttpResponse<String> no = device(captain).form("/devices/" + id + "/end", Map.of());
        assertEquals(403, no.statusCode());
        assertEquals("coach", who(coach));
        assertEquals(204, laptop.form("/devices/" + id + "/end", Map.of()).statusCode());
    }

    @Test
    void a_lent_laptop_does_what_a_captain_may_until_the_pin_takes_it_back() throws Exception {
        assertEquals(200, laptop.get("/import").statusCode());
        assertEquals(
                403,
                device(joined("", "coach", Map.of()))
                        .form("/laptop/lend", Map.of())
                        .statusCode());
        assertEquals(204, laptop.form("/laptop/lend", Map.of()).statusCode());
        assertEquals("this laptop, lent", who(""));
        assertEquals(403, laptop.get("/import").statusCode());
        assertEquals(200, laptop.get("/prepare").statusCode());
        app.close();
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 272);
        assertEquals("this laptop, lent", who(""), "a restart does not give it back");
    }

    @Test
    void the_lent_laptop_is_taken_back_with_the_pin_only() throws Exception {
        laptop.form("/laptop/lend", Map.of());
        String wrong = "000000";
        HttpResponse<String> no = laptop.form("/laptop/back", Map.of("pin", wrong));
        assertEquals(422, no.statusCode());
        assertTrue(no.body().contains("That is not the coach"), no.body());
        assertEquals(
                403,
                device(joined("", "captain", Map.of()))
                        .form("/laptop/back", Map.of("pin", Demo.PIN))
                        .statusCode());
        assertEquals(204, laptop.form("/laptop/back", Map.of("pin", Demo.PIN)).statusCode());
        assertEquals("this laptop", who(""));
    }

    private Socket stream(String cookie) throws Exception {
        Socket socket = new Socket("127.0.0.1", app.port());
        socket.getOutputStream()
                .write(("GET /live?topics=devices HTTP/1.1\r\nHost: localhost:" + app.port() + "\r\nCookie: " + cookie
                                + "\r\nAccept: text/event-stream\r\n\r\n")
                        .getBytes(StandardCharsets.UTF_8));
        return socket;
    }

    private static BufferedReader reader(Socket socket) throws Exception {
        return new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    }

    private static void until(BufferedReader in, String start) throws Exception {
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (line.startsWith(start)) {
                return;
            }
        }
        throw new AssertionError("The stream ended before '" + start + "'");
    }

    /** What a page knows of its own device. */
    private static final class CalledId {
        static String of(Visitor device) throws Exception {
            Matcher id = Pattern.compile("name=\"device\" content=\"([^\"]+)\"")
                    .matcher(device.get("/").body());
            assertTrue(id.find());
            return id.group(1);
        }
    }
}

package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.HashMap;
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
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;

/** Joining, the coach's PIN, ending a device, on the real server. */
@Timeout(30)
class DeviceWebTest {
    private static final Pattern DEVICE = Pattern.compile("name=\"device\" content=\"([^\"]+)\"");

    @TempDir
    Path root;

    private App app;
    private String token;
    private String code;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
        code = CodeOfDay.handedOut(app.port());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    /** On a folder in which the program has not been started before. */
    private void startedFirst() throws Exception {
        app.close();
        app = Demo.startFirst(root.resolve("first"));
        token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
        code = CodeOfDay.handedOut(app.port());
    }

    private Visitor stranger() {
        return new Visitor(app.port(), "", 7);
    }

    private HttpResponse<String> join(Map<String, String> more) throws Exception {
        Map<String, String> form =
                new HashMap<>(Map.of("token", token, "code", code, "role", "timekeeper", "person", ""));
        form.putAll(more);
        return stranger().form("/join", form);
    }

    private static String cookie(HttpResponse<String> joined) {
        assertEquals(204, joined.statusCode(), joined.body());
        return joined.headers().firstValue("Set-Cookie").orElseThrow();
    }

    private Visitor device(String cookie) {
        return new Visitor(app.port(), cookie.replaceFirst(";.*", ""), 8);
    }

    @Test
    void a_device_joins_as_a_person_and_a_role_and_is_greeted_by_both() throws Exception {
        String mattis = Demo.person(app, "Mattis");
        HttpResponse<String> joined = join(Map.of("person", mattis));
        assertEquals("/timing", joined.headers().firstValue("HX-Redirect").orElseThrow());
        String cookie = cookie(joined);
        assertTrue(cookie.contains("HttpOnly") && cookie.contains("SameSite"), cookie);
        assertTrue(device(cookie)
                .get("/timing")
                .body()
                .contains("<p class=\"who\"><a href=\"/join\">Mattis · timekeeper</a></p>"));
    }

    @Test
    void the_laptop_shows_the_whole_link_and_no_device_that_has_joined_does() throws Exception {
        String shown = new Visitor(app.port(), "", 58).get("/join").body();
        assertTrue(shown.contains("/join#" + token + "</b>"), shown);
        String joined =
                device(cookie(join(Map.of("role", "captain")))).get("/join").body();
        assertFalse(joined.contains(token), joined);
    }

    @Test
    void neither_the_token_nor_the_cookie_stands_in_the_record() throws Exception {
        String secret = cookie(join(Map.of())).replaceFirst("^[^=]*=", "").replaceFirst(";.*", "");
        String journal = Files.readString(root.resolve("day/journal.jsonl"));
        assertTrue(journal.contains("device.joined"));
        assertFalse(journal.contains(secret), "only a hash of it is kept");
        assertFalse(journal.contains(token));
    }

    @Test
    void a_wrong_code_a_wrong_name_and_a_wrong_role_are_said_beside_their_fields() throws Exception {
        var old = join(Map.of("token", "0".repeat(32), "code", ""));
        assertEquals(422, old.statusCode());
        assertTrue(old.body().contains("scan it again"), old.body());
        var nobody = join(Map.of("person", "x"));
        assertEquals(422, nobody.statusCode());
        assertTrue(nobody.body().contains("Choose a name of the list"), nobody.body());
        var role = join(Map.of("role", "king"));
        assertEquals(422, role.statusCode());
        assertTrue(role.body().contains("Choose what this device is for"), role.body());
    }

    @Test
    void a_coach_needs_the_pin_and_wrong_tries_are_slowed_while_the_laptop_is_never_locked_out() throws Exception {
        startedFirst();
        String pin = app.newPin();
        assertEquals(6, pin.length());
        String wrong = pin.equals("000000") ? "000001" : "000000";
        for (int i = 0; i < 6; i++) {
            assertEquals(422, join(Map.of("role", "coach", "pin", wrong)).statusCode());
        }
        var slowed = join(Map.of("role", "coach", "pin", pin));
        assertEquals(422, slowed.statusCode(), "even the right one, after too many wrong ones");
        assertTrue(slowed.body().contains("Wait") || slowed.body().contains("wait"), slowed.body());
        assertEquals(200, stranger().get("/devices").statusCode(), "the laptop itself");
    }

    @Test
    void the_crews_names_are_shown_only_to_who_has_the_code() throws Exception {
        var names = stranger().form("/join/who", Map.of("token", token));
        assertEquals(200, names.statusCode());
        assertTrue(names.body().contains("Mattis"));
        var refused = stranger().form("/join/who", Map.of("token", "0".repeat(32)));
        assertEquals(422, refused.statusCode());
    }

    @Test
    void another_person_takes_a_device_over_and_a_lost_answer_does_not_shut_it_out() throws Exception {
        String first = cookie(join(Map.of("person", Demo.person(app, "Mattis"))));
        var changed = device(first).form("/join", Map.of("person", Demo.person(app, "Oda"), "role", "helper"));
        assertEquals(204, changed.statusCode());
        assertTrue(device(first).get("/").body().contains("Oda · helper"), "with the cookie it had");
        var again = device(first).form("/join", Map.of("person", Demo.person(app, "Oda"), "role", "helper"));
        assertEquals(204, again.statusCode());
        assertEquals(1, stranger().get("/devices").body().split("/end\"", -1).length - 1);
    }

    @Test
    void entries_in_a_file_are_taken_in_as_the_devices_own_and_only_by_a_captain() throws Exception {
        String phone = cookie(join(Map.of()));
        Matcher id = DEVICE.matcher(device(phone).get("/timing").body());
        assertTrue(id.find());
        assertEquals(403, device(phone).post("/taps/file", "{\"taps\":[]}").statusCode());
        assertEquals(
                422,
                stranger().post("/taps/file", "{\"device\":\"x\",\"taps\":[]}").statusCode());
        String tap = "{\"device\":\"" + id.group(1) + "\",\"taps\":[{\"id\":\"" + "a".repeat(32)
                + "\",\"kind\":\"watch.release\",\"at\":\"2026-05-09T08:00:00Z\",\"content\":{\"attempt\":\"x\",\"slot\":1}}]}";
        var answer = stranger().post("/taps/file", tap);
        assertEquals(200, answer.statusCode());
        assertTrue(answer.body().contains("This device is not watch 1"), answer.body());
        assertTrue(stranger()
                .post("/taps/file", tap.replace("watch.release", "device.end"))
                .body()
                .contains("may not send"));
    }

    @Test
    void who_brought_a_file_of_entries_stands_in_the_record_beside_whose_they_are() throws Exception {
        String attempt = CalledForTests.call(stranger());
        String tap = "{\"device\":\"laptop\",\"taps\":[{\"id\":\"" + "b".repeat(32)
                + "\",\"kind\":\"watch.landing\",\"at\":\"2026-05-09T08:00:00Z\",\"content\":{\"attempt\":\"" + attempt
                + "\",\"slot\":1,\"ms\":61210}}]}";
        Visitor captain = device(cookie(join(Map.of("role", "captain", "person", Demo.person(app, "Ines")))));
        Matcher id = DEVICE.matcher(
                captain.get("/now").body() + captain.get("/timing").body());
        assertTrue(id.find());
        assertTrue(captain.post("/taps/file", tap).body().contains("saved"));
        String line = Files.readAllLines(root.resolve("day/journal.jsonl")).stream()
                .filter(l -> l.contains("b".repeat(32)))
                .findFirst()
                .orElseThrow();
        assertTrue(line.contains("\"dev\":\"laptop\""), line);
        assertTrue(
                line.contains(
                        "\"brought\":{\"dev\":\"" + id.group(1) + "\",\"who\":\"" + Demo.person(app, "Ines") + "\"}"),
                line);
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day")); // the line is read back and checked
        assertTrue(stranger().get("/now").body().contains("1:01.21"));
    }

    @Test
    void the_right_pin_makes_a_coach() throws Exception {
        Visitor coach = device(cookie(join(Map.of("role", "coach", "pin", Demo.PIN))));
        assertEquals(200, coach.get("/devices").statusCode());
    }

    @Test
    void an_ended_device_is_told_to_join_again_and_may() throws Exception {
        Visitor phone = device(cookie(join(Map.of())));
        Matcher id = Pattern.compile("/devices/([^/\"]+)/end")
                .matcher(stranger().get("/devices").body());
        assertTrue(id.find());
        assertEquals(
                204,
                stranger().form("/devices/" + id.group(1) + "/end", Map.of()).statusCode());
        assertFalse(phone.get("/").body().contains("· timekeeper"), "on this machine it is the laptop again");
        assertEquals(
                404,
                new Visitor(app.port(), "", 9) // pressed anew, and not the first press sent again
                        .form("/devices/" + id.group(1) + "/end", Map.of())
                        .statusCode());
        assertEquals(204, join(Map.of()).statusCode());
    }

    @Test
    void devices_stay_joined_over_a_restart_and_a_rebuilt_database() throws Exception {
        startedFirst();
        assertFalse(app.newPin().isEmpty());
        Visitor phone = device(cookie(join(Map.of("person", Demo.person(app, "Oda")))));
        assertEquals(200, phone.get("/timing").statusCode());
        int port = app.port();
        app.close();
        Files.delete(root.resolve("first/skeinday.mv.db"));
        app = App.start(
                new App.Settings(
                        root.resolve("first"), port, false, Pace.normal().dividedBy(20)),
                Clock.systemDefaultZone(),
                new SecureRandom());
        assertTrue(phone.get("/timing").body().contains("Oda · timekeeper"));
        assertTrue(app.newPin().isEmpty(), "the PIN stays");
    }
}

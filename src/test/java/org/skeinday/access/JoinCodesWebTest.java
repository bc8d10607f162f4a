package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
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

/** Who becomes what by which code, and that a code ends when the coach makes another. */
@Timeout(60)
class JoinCodesWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private long seeds = 9_000;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 90);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String link() {
        return app.joinLink().replaceFirst(".*#", "");
    }

    private HttpResponse<String> join(String cookie, String link, String code, String role) throws Exception {
        Map<String, String> form = Map.of("token", link, "code", code, "role", role, "person", "");
        return new Visitor(app.port(), cookie, ++seeds).form("/join", form);
    }

    private String joined(String cookie, String link, String code, String role) throws Exception {
        HttpResponse<String> answer = join(cookie, link, code, role);
        assertEquals(204, answer.statusCode(), answer.body());
        return answer.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
    }

    private void isRefused(String words, HttpResponse<String> answer) {
        assertEquals(422, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), answer.body());
    }

    private Visitor device(String cookie) {
        return new Visitor(app.port(), cookie, ++seeds);
    }

    private String meta(String cookie, String name) throws Exception {
        Matcher found = Pattern.compile("name=\"" + name + "\" content=\"([^\"]*)\"")
                .matcher(device(cookie).get("/").body());
        assertTrue(found.find());
        return found.group(1);
    }

    private String who(String cookie) throws Exception {
        return meta(cookie, "who");
    }

    private HttpResponse<String> answer(String cookie, String yesOrNo) throws Exception {
        Matcher row = Pattern.compile("/devices/" + meta(cookie, "device")
                        + "/yes\"[^>]*><input type=\"hidden\" name=\"asked\" value=\"([^\"]*)\"><input type=\"hidden\""
                        + " name=\"person\" value=\"([^\"]*)\">")
                .matcher(laptop.get("/devices/asking").body());
        return row.find() ? answer(cookie, yesOrNo, row.group(1), row.group(2)) : answer(cookie, yesOrNo, "", "");
    }

    private HttpResponse<String> answer(String cookie, String yesOrNo, String asked, String person) throws Exception {
        return laptop.form(
                "/devices/" + meta(cookie, "device") + "/" + yesOrNo, Map.of("asked", asked, "person", person));
    }

    @Test
    void by_link_or_typed_code_alone_nobody_is_more_than_a_helper() throws Exception {
        for (String role : new String[] {"timekeeper", "captain"}) {
            for (String[] by : new String[][] {
                {link(), ""},
                {"", app.invitation().typedCode()},
                {link(), app.invitation().typedCode()}
            }) {
                HttpResponse<String> answer = join("", by[0], by[1], role);
                assertEquals("/join", answer.headers().firstValue("HX-Redirect").orElseThrow());
                String cookie =
                        answer.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
                assertEquals("helper", who(cookie));
                assertEquals(403, device(cookie).get("/devices").statusCode());
                assertTrue(device(cookie).get("/join").body().contains("Asked to be " + role));
            }
        }
        assertEquals("viewer", who(joined("", "", app.invitation().typedCode(), "viewer")));
        assertEquals("helper", who(joined("", "", app.invitation().typedCode().toLowerCase(Locale.ROOT), "helper")));
    }

    @Test
    void the_coachs_yes_makes_a_captain_with_another_token() throws Exception {
        String asks = joined("", link(), "", "captain");
        assertTrue(laptop.get("/join").body().contains("asks to be captain"), "beside the code");
        assertTrue(laptop.get("/devices").body().contains("asks to be captain"));
        assertEquals(200, answer(asks, "yes").statusCode());
        assertEquals("helper", who(asks), "not before it has come for it");
        assertTrue(device(asks).get("/join/waiting").body().contains("Go on as captain"));
        String captain = joined(asks, "", "", "captain");
        assertNotEquals(asks, captain);
        assertEquals("captain", who(captain));
        assertEquals(409, answer(captain, "yes").statusCode(), "it asks for nothing any more");
        String viewer = joined(captain, "", "", "viewer");
        assertEquals("viewer", who(joined(viewer, "", "", "captain")), "a yes is for once");
    }

    @Test
    void a_yes_to_a_timekeeper_makes_no_captain_and_a_no_makes_nothing() throws Exception {
        String asks = joined("", link(), "", "timekeeper");
        answer(asks, "yes");
        String still = joined(asks, "", "", "captain");
        assertEquals("helper", who(still));
        assertEquals(200, answer(still, "no").statusCode());
        assertFalse(laptop.get("/devices").body().contains("asks to be"));
        assertEquals("helper", who(joined(still, "", "", "captain")));
    }

    @Test
    void a_yes_is_to_what_the_coach_has_read_and_to_nothing_else() throws Exception {
        String asks = joined("", link(), "", "timekeeper");
        String changed = joined(asks, "", "", "captain"); // while the coach reads
        HttpResponse<String> answer = answer(changed, "yes", "timekeeper", "");
        assertTrue(answer.statusCode() >= 400 && answer.body().contains("asks for something else"), answer.body());
        assertEquals("helper", who(joined(changed, "", "", "captain")));
    }

    @Test
    void a_yes_holds_over_a_restart_and_a_rebuilt_database() throws Exception {
        String asks = joined("", link(), "", "captain");
        answer(asks, "yes");
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        assertEquals("captain", who(joined(asks, "", "", "captain")));
    }

    @Test
    void today_s_code_makes_captains_until_another_is_handed_out() throws Exception {
        String first = CodeOfDay.handedOut(app.port());
        assertEquals("captain", who(joined("", "", first, "captain")));
        String helper = joined("", link(), "", "helper");
        assertEquals("timekeeper", who(joined(helper, "", first, "timekeeper")));
        String second = CodeOfDay.handedOut(app.port());
        isRefused("neither the code", join("", "", first, "captain"));
        isRefused("neither the code", join("", link(), first, "captain"));
        assertEquals("captain", who(joined("", "", second, "captain")));
    }

    @Test
    void new_codes_end_the_old_ones_at_once_and_no_device() throws Exception {
        String ofDay = CodeOfDay.handedOut(app.port());
        String stays = joined("", link(), ofDay, "captain");
        String link = link();
        String typed = app.invitation().typedCode();
        assertEquals(200, laptop.form("/codes/new", Map.of()).statusCode());
        isRefused("scan it again", join("", link, "", "viewer"));
        isRefused("neither the code", join("", "", typed, "viewer"));
        isRefused("neither the code", join("", "", ofDay, "captain"));
        assertEquals("captain", who(stays));
        assertEquals("viewer", who(joined("", link(), "", "viewer")));
        String shown = laptop.get("/join/code").body();
        assertTrue(
                shown.contains(app.invitation().typedCode()) && shown.contains(link()) && !shown.contains(link), shown);
    }

    @Test
    void an_ended_device_needs_a_new_code() throws Exception {
        String ended = joined("", link(), "", "helper");
        String ofDay = CodeOfDay.handedOut(app.port());
        laptop.form("/devices/" + meta(ended, "device") + "/end", Map.of());
        String words = "joins again with a new code only";
        isRefused(words, join(ended, link(), "", "viewer"));
        isRefused(words, join(ended, "", app.invitation().typedCode(), "viewer"));
        isRefused(words, join(ended, "", ofDay, "captain"));
        isRefused(words, device(ended).form("/join/who", Map.of("token", link())));
        laptop.form("/codes/new", Map.of());
        assertEquals("viewer", who(joined(ended, link(), "", "viewer")));
    }

    @Test
    void ending_a_device_makes_the_codes_new_at_once_and_keeps_who_has_joined() throws Exception {
        String ended = joined("", link(), "", "helper");
        String stays = joined("", link(), CodeOfDay.handedOut(app.port()), "captain");
        String link = link();
        String typed = app.invitation().typedCode();
        assertTrue(laptop.get("/devices").body().contains("id=\"new-codes\" name=\"codes\" value=\"new\" checked"));
        laptop.form("/devices/" + meta(ended, "device") + "/end", Map.of("codes", "new"));
        isRefused("scan it again", join("", link, "", "viewer")); // its browser was cleared
        isRefused("neither the code", join("", "", typed, "viewer"));
        assertEquals("captain", who(stays));
        assertEquals("viewer", who(joined(ended, link(), "", "viewer")));
    }

    @Test
    void codes_stay_where_the_coach_unticks_it_and_where_a_captain_ends_a_device() throws Exception {
        String captain = joined("", "", CodeOfDay.handedOut(app.port()), "captain");
        String one = joined("", link(), "", "helper");
        String other = joined("", link(), "", "helper");
        String link = link();
        laptop.form("/devices/" + meta(one, "device") + "/end", Map.of());
        assertEquals(link, link());
        assertFalse(device(captain).get("/devices").body().contains("new-codes"));
        assertEquals(
                204,
                device(captain)
                        .form("/devices/" + meta(other, "device") + "/end", Map.of("codes", "new"))
                        .statusCode());
        assertEquals(link, link(), "a captain makes no codes");
    }

    @Test
    void wrong_codes_are_slowed_and_who_is_refused_is_told_why() throws Exception {
        isRefused("Type the code", join("", "", "", "viewer"));
        for (int i = 0; i < 5; i++) {
            isRefused("neither the code", join("", "", "AAA AAA", "viewer"));
        }
        isRefused("Too many wrong tries: wait", join("", "", app.invitation().typedCode(), "viewer"));
        isRefused(
                "Too many wrong tries: wait",
                device("").form("/join/who", Map.of("code", app.invitation().typedCode())));
        assertEquals("viewer", who(joined("", link(), "", "viewer")), "who scans is not kept waiting");
    }

    @Test
    void only_the_coach_sees_and_makes_todays_code() throws Exception {
        String ofDay = CodeOfDay.handedOut(app.port());
        String captain = joined("", "", ofDay, "captain");
        assertTrue(laptop.get("/devices").body().contains(ofDay));
        assertFalse(device(captain).get("/devices").body().contains(ofDay));
        assertEquals(403, device(captain).form("/codes/today", Map.of()).statusCode());
        assertEquals(403, device(captain).form("/codes/new", Map.of()).statusCode());
        laptop.form("/laptop/lend", Map.of());
        assertFalse(laptop.get("/devices").body().contains(ofDay), "lent, it is in the students' hands");
        assertEquals(403, answer(joined("", link(), "", "captain"), "yes").statusCode());
    }

    @Test
    void no_code_stands_in_the_record_or_the_log() throws Exception {
        String ofDay = CodeOfDay.handedOut(app.port());
        joined("", "", ofDay, "captain");
        joined("", link(), app.invitation().typedCode(), "helper");
        join("", link(), "AAA AAA", "helper");
        String kept = Files.readString(root.resolve("day/journal.jsonl"));
        try (var files = Files.list(root.resolve("day/logs"))) {
            for (Path log : files.toList()) {
                kept += Files.readString(log);
            }
        }
        for (String secret : new String[] {link(), app.invitation().typedCode(), ofDay}) {
            assertFalse(kept.contains(secret), secret);
            assertFalse(kept.contains(secret.replace(" ", "")), secret);
        }
    }
}

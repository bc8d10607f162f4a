package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** The chief's desk of a hosted day: what waits, and many times signed with one PIN. */
@Timeout(60)
class DeskWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.startEmpty(Demo.withPin(HostedDay.into(root.resolve("day"), 14, 2, 31)), Clock.systemDefaultZone());
        laptop = new Visitor(app.port(), "", 1);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String desk() throws Exception {
        return laptop.get("/desk/part").body();
    }

    /** What the boxes of the form would send. */
    private static List<String> boxes(String desk) {
        return Pattern.compile("name=\"times\" value=\"([^\"]+)\"")
                .matcher(desk)
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    private HttpResponse<String> sign(List<String> times, String pin) throws Exception {
        String body = Stream.concat(
                        Stream.of("act=" + laptop.newId(), "pin=" + pin),
                        times.stream().map(t -> "times=" + URLEncoder.encode(t, StandardCharsets.UTF_8)))
                .collect(Collectors.joining("&"));
        return laptop.formBody("/desk/sign", body);
    }

    @Test
    void all_that_are_shown_are_signed_with_one_pin() throws Exception {
        List<String> times = boxes(desk());
        assertTrue(times.size() > 8, desk());
        assertTrue(desk().contains(times.size() + " times to sign"), desk());
        HttpResponse<String> signed = sign(times, Demo.PIN);
        assertEquals(200, signed.statusCode(), signed.body());
        assertTrue(signed.body().contains("Nothing waits"), "no watch timed them: " + signed.body());
        assertFalse(
                laptop.get("/results").body().contains("provisional"),
                laptop.get("/results").body());
        HttpResponse<String> again = sign(times.subList(0, 1), Demo.PIN);
        assertEquals(409, again.statusCode(), "it is signed: " + again.body());
    }

    @Test
    void nothing_is_signed_with_a_wrong_pin_without_one_or_without_a_tick() throws Exception {
        List<String> times = boxes(desk());
        String wrong = Demo.PIN.startsWith("1") ? "222222" : "111111";
        assertEquals(422, sign(times, wrong).statusCode());
        HttpResponse<String> without = sign(times, "");
        assertEquals(422, without.statusCode());
        assertTrue(without.body().contains("The captain signs with the coach"), without.body());
        HttpResponse<String> none = sign(List.of(), Demo.PIN);
        assertTrue(none.statusCode() == 422 && none.body().contains("Tick the times"), none.body());
        assertEquals(times, boxes(desk()));
    }

    @Test
    void where_one_was_changed_meanwhile_none_is_signed() throws Exception {
        List<String> times = boxes(desk());
        String attempt = times.get(2).replaceFirst(" .*", "");
        assertEquals(
                200,
                laptop.form("/attempt/" + attempt + "/reopen", Map.of("reason", "a watch was misread"))
                        .statusCode());
        HttpResponse<String> answer = sign(times, Demo.PIN);
        assertEquals(409, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("none is signed now"), answer.body());
        assertEquals(times.size() - 1, boxes(desk()).size(), "the one that is open again is not shown");
    }

    @Test
    void protests_and_corrections_wait_there_until_they_are_settled_and_signed() throws Exception {
        String attempt = boxes(desk()).get(0).replaceFirst(" .*", "");
        laptop.form("/attempt/" + attempt + "/protest", Map.of("words", "Team 3: it touched the beam, 5.2"));
        assertTrue(desk().contains("1 open protest") && desk().contains("it touched the beam"), desk());
        String protest = Pattern.compile("name=\"protest\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/attempt/" + attempt + "/part").body())
                .results()
                .findFirst()
                .orElseThrow()
                .group(1);
        laptop.form("/attempt/" + attempt + "/settle", Map.of("protest", protest, "how", "not upheld, by the jury"));
        assertFalse(desk().contains("it touched the beam"), desk());
    }

    @Test
    void boxes_that_no_page_has_shown_sign_nothing() throws Exception {
        assertEquals(422, sign(List.of("x", "a b c"), Demo.PIN).statusCode());
        assertEquals(404, sign(List.of("nobody 61000"), Demo.PIN).statusCode());
    }
}

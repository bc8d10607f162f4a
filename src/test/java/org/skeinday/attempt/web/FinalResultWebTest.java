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
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.device.JoinCode;
import org.skeinday.device.SpectatorPass;
import org.skeinday.fault.CalledForTests;

/** A result is provisional until the chief makes it final; every later change makes another version and says what changed. */
@Timeout(120)
class FinalResultWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        open(Demo.withPin(HostedDay.into(root.resolve("day"), 14, 2, 31)));
    }

    private void open(Path folder) throws Exception {
        app = Demo.startEmpty(folder, Clock.systemDefaultZone());
        laptop = new Visitor(app.port(), "", 1);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private List<String> boxes() throws Exception {
        return Pattern.compile("name=\"times\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/desk/part").body())
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    private void signAll() throws Exception {
        String times = boxes().stream()
                .map(t -> "&times=" + URLEncoder.encode(t, StandardCharsets.UTF_8))
                .collect(Collectors.joining());
        assertEquals(
                200, laptop.formBody("/desk/sign", "pin=" + Demo.PIN + times).statusCode());
    }

    private HttpResponse<String> make(String sheet, String pin) throws Exception {
        return laptop.form(
                "/results/final",
                Map.of(
                        "seen",
                        CalledForTests.value(sheet, "name=\"seen\" value=\"([^\"]+)\""),
                        "after",
                        CalledForTests.value(sheet, "name=\"after\" value=\"([^\"]+)\""),
                        "pin",
                        pin));
    }

    private String sheet() throws Exception {
        return laptop.get("/results/part").body();
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        says(words, answer.body());
    }

    private static void says(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    /** As everybody sees it. */
    private void stands(String words, String csv) throws Exception {
        String code = SpectatorPass.codeOf(new JoinCode(app.joinLink().replaceFirst(".*#", "")));
        Visitor spectator =
                new Visitor(app.port(), "skeinday=" + new SpectatorPass(code, "0000000000000005").text(), 5);
        says(words, spectator.get("/results").body());
        says(words, spectator.get("/results/wall").body());
        says(words, laptop.get("/results/print").body());
        String file = spectator.get("/results.csv").body();
        assertTrue(file.lines().skip(1).allMatch(line -> line.endsWith(csv)), file);
    }

    @Test
    void a_result_becomes_final_once_nothing_of_it_is_owed_and_each_change_makes_a_version() throws Exception {
        stands("Provisional", ",provisional,1");
        says("times are not signed by all", sheet());
        assertFalse(sheet().contains("name=\"seen\""), "no form before all have signed");
        String of = boxes().get(0);
        signAll();
        says(422, "with the coach's PIN", make(sheet(), ""));
        assertEquals(
                422,
                make(sheet(), Demo.PIN.startsWith("1") ? "222222" : "111111").statusCode());
        says(200, "Final, version 1", make(sheet(), Demo.PIN));
        assertFalse(sheet().contains("Make the result final"), "it is");
        stands("Final, version 1", ",final,1");
        String attempt = of.replaceFirst(" .*", "");
        laptop.form("/attempt/" + attempt + "/reopen", Map.of("reason", "a watch was misread", "pin", Demo.PIN));
        stands("Provisional, version 2: changed since version 1", ",provisional,2");
        says("was ", sheet());
        says("; now ", sheet());
        says("1 attempt is under way", sheet());
        for (String slot : List.of("1", "2")) {
            laptop.form(
                    "/attempt/" + attempt + "/type-time",
                    Map.of("attempt", attempt, "typed", "3:20.50", "typed-slot", slot, "typed-at", "landing"));
        }
        laptop.form("/attempt/close", Map.of("attempt", attempt, "why", "both were read again"));
        says("3:20.5", sheet());
        for (String as : List.of("watch-1", "watch-2", "captain")) {
            laptop.form("/attempt/" + attempt + "/sign", Map.of("as", as, "seen", "200500", "pin", Demo.PIN));
        }
        says(200, "Final, version 2", make(sheet(), Demo.PIN));
        app.close();
        open(root.resolve("day"));
        stands("Final, version 2", ",final,2");
    }

    @Test
    void what_is_made_final_is_what_was_shown_and_a_protest_opens_it_again() throws Exception {
        signAll();
        String before = sheet();
        String attempt = CalledForTests.value(before, "href=\"/attempt/([^\"]+)\"");
        laptop.form("/attempt/" + attempt + "/reopen", Map.of("reason", "a watch was misread", "pin", Demo.PIN));
        says(409, "The result was changed meanwhile", make(before, Demo.PIN));
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "no watch can be read"));
        says(200, "Final, version 1", make(sheet(), Demo.PIN));
        String other = CalledForTests.value(sheet(), "href=\"/attempt/([^\"]+)\"[^>]*>\\d:");
        laptop.form("/attempt/" + other + "/protest", Map.of("words", "Team 3: it touched the beam, 5.2"));
        stands("Provisional again: version 1", ",provisional,1");
    }
}

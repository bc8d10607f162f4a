package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.web.StagedAttempt.Stage;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Each act in each phase that does not have it: a sentence says which phase it is and what can be done; nothing changes. */
@Timeout(300)
class WrongPhaseWebTest {
    @TempDir
    Path root;

    private StagedAttempt day;
    private Visitor laptop;
    private String attempt;
    private String motor;

    @AfterEach
    void stop() throws Exception {
        day.close();
    }

    static Stream<Stage> stages() {
        return Stream.of(Stage.values());
    }

    @ParameterizedTest
    @MethodSource("stages")
    void an_act_that_the_phase_does_not_have_is_refused_in_words_and_changes_nothing(Stage stage) throws Exception {
        open();
        day.reach(stage);
        Map<AttemptAct, Map.Entry<String, Map<String, String>>> forms = forms();
        assertEquals(EnumSet.allOf(AttemptAct.class), forms.keySet(), "each act has a form here");
        Path journal = root.resolve("day/journal.jsonl");
        Map<AttemptAct, String> wrong = new LinkedHashMap<>();
        for (var form : forms.entrySet()) {
            if (!stage.acts().contains(form.getKey()) && !isSameForm(form.getKey(), stage)) {
                long before = Files.size(journal);
                HttpResponse<String> answer =
                        laptop.form(form.getValue().getKey(), form.getValue().getValue());
                String whose = form.getKey() == AttemptAct.CALL ? "attempt 1 is still " : "This attempt is ";
                boolean says = answer.body().contains(whose + stage.words + ". ")
                        && (answer.body().contains("What can be done now: ")
                                || answer.body().contains("Nothing more is done to it."));
                if (answer.statusCode() != 422 || !says || Files.size(journal) != before) {
                    wrong.put(form.getKey(), answer.statusCode() + " " + StagedAttempt.words(answer.body()));
                }
            }
        }
        assertEquals(Map.of(), wrong, stage.name());
    }

    @Test
    void nobody_hears_of_keys_that_are_the_captains_alone() throws Exception {
        open();
        Visitor timekeeper = Demo.joined(day.app, "timekeeper", "", 98);
        String sign = timekeeper
                .form("/attempt/" + attempt + "/sign", Map.of("as", "watch-1", "seen", "61000"))
                .body();
        assertTrue(sign.contains("This attempt is called. What can be done now: Released."), sign);
        String words = "launched late, section 5.2";
        String protest = timekeeper
                .form("/attempt/" + attempt + "/protest", Map.of("words", words))
                .body();
        assertTrue(
                protest.contains("A protest is against a flight that has landed. This attempt is called."
                        + " What can be done now: Released."),
                protest);
        Visitor helper = Demo.joined(day.app, "helper", "", 99);
        Map<String, String> told = Map.of("attempt", attempt, "motor", motor, "place", "hook", "turns", "30");
        for (String form : List.of("parted", "people-safe", "run-back", "broke-too")) {
            String called = helper.form("/attempt/" + form, told).body();
            assertTrue(called.contains("What can be done now: Start winding, Another motor."), form + called);
            String captain = laptop.form("/attempt/" + form, told).body();
            assertTrue(captain.contains("Abandon attempt."), form + captain);
        }
        day.reach(Stage.HOLDING);
        String holding = helper.form("/attempt/people-safe", told).body();
        assertTrue(holding.contains("More turns, Some off, Broke, Run it back."), holding);
        day.move("released");
        String flies = helper.form("/attempt/run-back", told).body();
        assertTrue(flies.contains("nothing from here; the captain has the next key."), flies);
    }

    @Test
    void whoever_is_refused_hears_what_the_own_device_can_do_whichever_act_it_was() throws Exception {
        open();
        Visitor helper = Demo.joined(day.app, "helper", "", 98);
        Visitor timekeeper = Demo.joined(day.app, "timekeeper", "", 99);
        Map<String, String> turns = Map.of("attempt", attempt, "remaining", "30");
        assertSays("is called. What can be done now: Start winding, Another motor.", helper, "/winding/landed", turns);
        assertSays("is called. What can be done now: Released.", timekeeper, "/winding/landed", turns);
        assertSays("Another motor, Abandon attempt.", laptop, "/winding/landed", turns);
        Map<String, String> time = Map.of("attempt", attempt, "typed-slot", "1", "typed", "1:01.6");
        assertSays(
                "is called. What can be done now: Released.", timekeeper, "/attempt/" + attempt + "/type-time", time);
        assertSays("Another motor, Abandon attempt.", laptop, "/attempt/type-time", time);
        day.reach(Stage.IN_THE_AIR);
        Map<String, String> aim = Map.of("attempt", attempt, "launch", "2.1", "ceiling", "");
        assertSays("nothing from here; the captain has the next key.", helper, "/winding/aim", aim);
        assertSays(
                "is in the air. What can be done now: Not released after all, Landed, ", laptop, "/winding/aim", aim);
        ObjectNode place = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put(
                        "station",
                        new FilledForms(laptop)
                                .row("stations", "Table by the door")
                                .replaceFirst(".*/", ""));
        String refused = helper.tap("attempt.station", place).path("reason").asText();
        assertTrue(refused.contains("nothing from here; the captain has the next key."), refused);
        String captain = laptop.tap("attempt.station", place).path("reason").asText();
        assertTrue(captain.contains("is in the air. What can be done now: Not released after all, "), captain);
    }

    private static void assertSays(String words, Visitor who, String form, Map<String, String> fields)
            throws Exception {
        HttpResponse<String> answer = who.form(form, fields);
        assertTrue(
                Set.of(409, 422).contains(answer.statusCode()), answer.body()); // 409 within seconds of another's act
        assertTrue(answer.body().contains(words), form + answer.body());
    }

    @Test
    void a_flight_that_has_landed_is_protested_also_when_it_was_declared_void() throws Exception {
        open();
        day.reach(Stage.LANDED);
        Visitor timekeeper = Demo.joined(day.app, "timekeeper", "", 98);
        Map<String, String> first = Map.of("words", "launched late, section 5.2");
        assertEquals(
                200, timekeeper.form("/attempt/" + attempt + "/protest", first).statusCode());
        day.taken("/attempt/give-up", Map.of("reason", "a ball"));
        HttpResponse<String> again =
                timekeeper.form("/attempt/" + attempt + "/protest", Map.of("words", "no ball was near"));
        assertEquals(200, again.statusCode());
        assertTrue(again.body().contains("no ball was near") && again.body().contains("launched late"), again.body());
    }

    /** One form for two acts does what the phase has; where a motor parted may be corrected as long as anybody likes. */
    private static boolean isSameForm(AttemptAct act, Stage stage) {
        return switch (act) {
            case NOT_RELEASED, STILL_FLYING ->
                stage.acts().contains(AttemptAct.NOT_RELEASED) || stage.acts().contains(AttemptAct.STILL_FLYING);
            case ABANDON, DECLARE_VOID ->
                stage.acts().contains(AttemptAct.ABANDON) || stage.acts().contains(AttemptAct.DECLARE_VOID);
            case PEOPLE_SAFE -> stage == Stage.SAFE || stage == Stage.PARTED; // two said the same
            case SAY_WHERE -> stage == Stage.PARTED;
            case CALL -> stage.phase.name().isOver() || stage == Stage.RUN_BACK; // the next one may be called
            default -> false;
        };
    }

    private Map<AttemptAct, Map.Entry<String, Map<String, String>>> forms() throws Exception {
        Map<AttemptAct, Map.Entry<String, Map<String, String>>> forms = new EnumMap<>(AttemptAct.class);
        put(forms, AttemptAct.CALL, "/attempt/call", "entry", day.entry, "number", "2", "motor", day.motor("B2"));
        put(forms, AttemptAct.PROTEST, "/attempt/" + attempt + "/protest", "words", "launched late, section 5.2");
        put(forms, AttemptAct.FIRST_TURN, "/attempt/move", "to", "winding");
        put(forms, AttemptAct.LAST_TURN, "/attempt/move", "to", "holding");
        put(forms, AttemptAct.RELEASED, "/attempt/move", "to", "released");
        put(forms, AttemptAct.LANDED, "/attempt/move", "to", "landed");
        put(forms, AttemptAct.MORE_TURNS, "/attempt/more-turns");
        put(forms, AttemptAct.SOME_OFF, "/attempt/some-off", "turns-off", "2");
        put(forms, AttemptAct.NOT_RELEASED, "/attempt/take-back");
        put(forms, AttemptAct.STILL_FLYING, "/attempt/take-back");
        put(forms, AttemptAct.BROKE, "/attempt/broke");
        put(forms, AttemptAct.PEOPLE_SAFE, "/attempt/people-safe", "motor", motor);
        put(forms, AttemptAct.NOT_BROKEN, "/attempt/not-broken", "motor", motor);
        put(forms, AttemptAct.SAY_WHERE, "/attempt/parted", "motor", motor, "place", "hook");
        put(forms, AttemptAct.TAKE_SPARE, "/attempt/take-motor", "motor", day.motor("B2"), "seenMotor", motor);
        put(forms, AttemptAct.RUN_BACK, "/attempt/run-back", "motor", motor, "turns", "30");
        put(forms, AttemptAct.TYPE_TIME, "/attempt/type-time", "typed-slot", "1", "typed", "1:01.6");
        put(forms, AttemptAct.JUDGE_WATCH, "/watch/judge", "slot", "1", "verdict", "failed", "judged", "it fell");
        put(forms, AttemptAct.ANNOUNCE, "/attempt/announce", "announced", "1:01.6");
        put(forms, AttemptAct.CAUGHT, "/attempt/aloft", "to", "caught");
        put(forms, AttemptAct.FREE_AGAIN, "/attempt/aloft", "to", "free");
        put(forms, AttemptAct.STILL_HELD, "/attempt/aloft", "to", "still-held");
        put(forms, AttemptAct.START_AGAIN, "/attempt/aloft", "to", "start-again");
        put(forms, AttemptAct.STEERED, "/attempt/aloft", "to", "steered", "steered", "pole");
        put(forms, AttemptAct.COLLIDED, "/attempt/collision", "to", "told");
        put(forms, AttemptAct.CLOSE, "/attempt/close", "why", "both asked");
        put(forms, AttemptAct.SIGN, "/attempt/" + attempt + "/sign", "as", "captain", "seen", "61600", "pin", Demo.PIN);
        put(
                forms,
                AttemptAct.REOPEN,
                "/attempt/" + attempt + "/reopen",
                "reason",
                "a watch was misread",
                "pin",
                Demo.PIN);
        put(forms, AttemptAct.ABANDON, "/attempt/give-up", "reason", "the roof leaks");
        put(forms, AttemptAct.DECLARE_VOID, "/attempt/give-up", "reason", "the roof leaks");
        return forms;
    }

    private void put(
            Map<AttemptAct, Map.Entry<String, Map<String, String>>> forms,
            AttemptAct act,
            String address,
            String... fields) {
        Map<String, String> all = new LinkedHashMap<>(Map.of("attempt", attempt));
        for (int i = 0; i < fields.length; i += 2) {
            all.put(fields[i], fields[i + 1]);
        }
        forms.put(act, Map.entry(address, all));
    }

    private void open() throws Exception {
        day = new StagedAttempt(root.resolve("day"));
        laptop = day.laptop;
        attempt = day.attempt;
        motor = day.motor;
    }
}

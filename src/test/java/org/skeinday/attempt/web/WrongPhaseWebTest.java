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
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.Hands;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.contest.DayKind;
import org.skeinday.fault.CalledForTests;
import org.skeinday.motor.BreakPlace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Each act in each phase that does not have it: a sentence says which phase it is and what can be done; nothing changes. */
@Timeout(300)
class WrongPhaseWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;
    private String motor;
    private String entry;

    /** One phase, and how a day comes there. */
    private enum Stage {
        CALLED(new AttemptPhase.Called(0, 1), "called"),
        WINDING(new AttemptPhase.Winding(0, 1), "winding"),
        HOLDING(new AttemptPhase.Holding(0, 1), "holding"),
        BROKE(new AttemptPhase.Broke(0, "m", false, null, false), "stopped: its motor broke"),
        SAFE(new AttemptPhase.Broke(0, "m", true, null, false), "stopped: its motor broke"),
        PARTED(new AttemptPhase.Broke(0, "m", true, BreakPlace.HOOK, false), "stopped: its motor broke"),
        RUN_BACK(new AttemptPhase.RunBack(0, "m"), "given up and its motor still has turns on"),
        ABANDONED(new AttemptPhase.Abandoned(0, ""), "abandoned"),
        IN_THE_AIR(new AttemptPhase.InTheAir(0, null, false), "in the air"),
        LANDED(new AttemptPhase.Landed(0, 0, 2, null), "landed"),
        VOID(new AttemptPhase.DeclaredVoid(0, "", false), "void"),
        OFFICIAL(new AttemptPhase.Official(0, 1, 3), "provisional");

        private final AttemptPhase phase;
        private final String words;

        Stage(AttemptPhase phase, String words) {
            this.phase = phase;
            this.words = words;
        }

        Set<AttemptAct> acts() {
            var live = new LiveAttempt("a", "e", AttemptNumber.plain(1), null, "m", 1, DayKind.HOSTING, phase);
            Set<AttemptAct> acts = EnumSet.noneOf(AttemptAct.class);
            Stream.of(Hands.values()).forEach(hands -> acts.addAll(AttemptActs.of(live, hands)));
            return acts;
        }
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    static Stream<Stage> stages() {
        return Stream.of(Stage.values());
    }

    @ParameterizedTest
    @MethodSource("stages")
    void an_act_that_the_phase_does_not_have_is_refused_in_words_and_changes_nothing(Stage stage) throws Exception {
        open();
        reach(stage);
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
                    wrong.put(form.getKey(), answer.statusCode() + " " + words(answer.body()));
                }
            }
        }
        assertEquals(Map.of(), wrong, stage.name());
    }

    @Test
    void nobody_hears_of_keys_that_are_the_captains_alone() throws Exception {
        open();
        Visitor timekeeper = Demo.joined(app, "timekeeper", "", 98);
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
        Visitor helper = Demo.joined(app, "helper", "", 99);
        Map<String, String> told = Map.of("attempt", attempt, "motor", motor, "place", "hook", "turns", "30");
        for (String form : List.of("parted", "people-safe", "run-back", "broke-too")) {
            String called = helper.form("/attempt/" + form, told).body();
            assertTrue(called.contains("What can be done now: Start winding, Another motor."), form + called);
            String captain = laptop.form("/attempt/" + form, told).body();
            assertTrue(captain.contains("Abandon attempt."), form + captain);
        }
        reach(Stage.HOLDING);
        String holding = helper.form("/attempt/people-safe", told).body();
        assertTrue(holding.contains("More turns, Some off, Broke, Run it back."), holding);
        move("released");
        String flies = helper.form("/attempt/run-back", told).body();
        assertTrue(flies.contains("nothing from here; the captain has the next key."), flies);
    }

    @Test
    void whoever_is_refused_hears_what_the_own_device_can_do_whichever_act_it_was() throws Exception {
        open();
        Visitor helper = Demo.joined(app, "helper", "", 98);
        Visitor timekeeper = Demo.joined(app, "timekeeper", "", 99);
        Map<String, String> turns = Map.of("attempt", attempt, "remaining", "30");
        assertSays("is called. What can be done now: Start winding, Another motor.", helper, "/winding/landed", turns);
        assertSays("is called. What can be done now: Released.", timekeeper, "/winding/landed", turns);
        assertSays("Another motor, Abandon attempt.", laptop, "/winding/landed", turns);
        Map<String, String> time = Map.of("attempt", attempt, "typed-slot", "1", "typed", "1:01.6");
        assertSays(
                "is called. What can be done now: Released.", timekeeper, "/attempt/" + attempt + "/type-time", time);
        assertSays("Another motor, Abandon attempt.", laptop, "/attempt/type-time", time);
        reach(Stage.IN_THE_AIR);
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
        reach(Stage.LANDED);
        Visitor timekeeper = Demo.joined(app, "timekeeper", "", 98);
        Map<String, String> first = Map.of("words", "launched late, section 5.2");
        assertEquals(
                200, timekeeper.form("/attempt/" + attempt + "/protest", first).statusCode());
        taken("/attempt/give-up", Map.of("reason", "a ball"));
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

    private static String words(String page) {
        String text = page.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
        int at = text.indexOf("ttempt is");
        return at < 0
                ? text.substring(0, Math.min(400, text.length()))
                : text.substring(at, Math.min(at + 200, text.length()));
    }

    private Map<AttemptAct, Map.Entry<String, Map<String, String>>> forms() throws Exception {
        Map<AttemptAct, Map.Entry<String, Map<String, String>>> forms = new EnumMap<>(AttemptAct.class);
        put(forms, AttemptAct.CALL, "/attempt/call", "entry", entry, "number", "2", "motor", motor("B2"));
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
        put(forms, AttemptAct.TAKE_SPARE, "/attempt/take-motor", "motor", motor("B2"), "seenMotor", motor);
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
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 97);
        motor = motor("A3");
        entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private void reach(Stage stage) throws Exception {
        switch (stage) {
            case CALLED -> {}
            case WINDING -> begin();
            case HOLDING -> {
                begin();
                move("holding");
            }
            case BROKE -> {
                begin();
                taken("/attempt/broke", Map.of());
            }
            case SAFE -> {
                reach(Stage.BROKE);
                taken("/attempt/people-safe", Map.of("motor", motor));
            }
            case PARTED -> {
                reach(Stage.SAFE);
                taken("/attempt/parted", Map.of("motor", motor, "place", "hook"));
            }
            case RUN_BACK -> {
                begin();
                taken("/attempt/give-up", Map.of("reason", "a rib broke"));
            }
            case ABANDONED -> taken("/attempt/give-up", Map.of("reason", "a rib broke"));
            case IN_THE_AIR -> {
                reach(Stage.HOLDING);
                move("released");
            }
            case LANDED -> {
                reach(Stage.IN_THE_AIR);
                move("landed");
            }
            case VOID -> {
                reach(Stage.LANDED);
                taken("/attempt/give-up", Map.of("reason", "a ball"));
            }
            case OFFICIAL -> {
                reach(Stage.LANDED);
                taken("/attempt/type-time", Map.of("typed-slot", "1", "typed", "1:01.61"));
                taken("/attempt/type-time", Map.of("typed-slot", "2", "typed", "1:01.65"));
                taken("/attempt/close", Map.of("why", "both asked"));
            }
        }
    }

    private void begin() throws Exception {
        ObjectNode content =
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor);
        assertEquals("saved", laptop.tap("wind.begin", content).path("state").asText());
    }

    private void move(String to) throws Exception {
        taken("/attempt/move", Map.of("to", to));
    }

    private void taken(String address, Map<String, String> fields) throws Exception {
        Map<String, String> all = new LinkedHashMap<>(Map.of("attempt", attempt));
        all.putAll(fields);
        HttpResponse<String> answer = laptop.form(address, all);
        assertTrue(answer.statusCode() == 200, () -> address + " " + answer.statusCode() + words(answer.body()));
    }
}

package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
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

/** A day whose first attempt is called, and is then brought to any phase. */
final class StagedAttempt implements AutoCloseable {
    /** One phase, and how a day comes there. */
    enum Stage {
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

        final AttemptPhase phase;
        final String words;

        Stage(AttemptPhase phase, String words) {
            this.phase = phase;
            this.words = words;
        }

        Set<AttemptAct> acts() {
            var live = new LiveAttempt("a", "e", AttemptNumber.plain(1), null, "m", 1, DayKind.HOSTING, phase, null);
            Set<AttemptAct> acts = EnumSet.noneOf(AttemptAct.class);
            Stream.of(Hands.values()).forEach(hands -> acts.addAll(AttemptActs.of(live, hands)));
            return acts;
        }
    }

    final App app;
    final Visitor laptop;
    final String motor;
    final String entry;
    final String attempt;
    final String title;
    /** Id of the wind that was begun; empty for none. */
    private String wind = "";

    StagedAttempt(Path folder) throws Exception {
        app = Demo.start(folder);
        laptop = new Visitor(app.port(), "", 97);
        motor = motor("A3");
        entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        title = CalledForTests.value(called, "<h1>([^<]+?) <");
        CalledForTests.letWind(laptop, attempt);
    }

    @Override
    public void close() throws IOException {
        app.close();
    }

    String wind() {
        return wind;
    }

    /** What a page says of the phase, short. */
    static String words(String page) {
        String text = page.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
        int at = text.indexOf("ttempt is");
        return at < 0
                ? text.substring(0, Math.min(400, text.length()))
                : text.substring(at, Math.min(at + 200, text.length()));
    }

    String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    void reach(Stage stage) throws Exception {
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
        String id = laptop.newId();
        ObjectNode content =
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor);
        assertEquals(
                "saved", laptop.tapAs(id, "wind.begin", content).path("state").asText());
        wind = id + "-0";
    }

    void move(String to) throws Exception {
        taken("/attempt/move", Map.of("to", to));
    }

    void taken(String address, Map<String, String> fields) throws Exception {
        Map<String, String> all = new LinkedHashMap<>(Map.of("attempt", attempt));
        all.putAll(fields);
        HttpResponse<String> answer = laptop.form(address, all);
        assertTrue(answer.statusCode() == 200, () -> address + " " + answer.statusCode() + words(answer.body()));
    }
}

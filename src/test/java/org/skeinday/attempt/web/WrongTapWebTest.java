package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.web.StagedAttempt.Stage;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/**
 * Taps in phases that do not have them. What decides something is refused with the phase and what can be done. What somebody
 * has seen (the needle, the last turn, a watch) is never refused, since it may come late: it is kept, moves nothing and is
 * told as nobody's act.
 */
@Timeout(300)
class WrongTapWebTest {
    /** The last turn and one turn more belong to none of these. */
    private static final Set<Stage> NOT_WOUND =
            Set.of(Stage.IN_THE_AIR, Stage.LANDED, Stage.VOID, Stage.OFFICIAL, Stage.RUN_BACK);

    private static final Set<Stage> NOT_FLOWN =
            Set.of(Stage.BROKE, Stage.SAFE, Stage.PARTED, Stage.RUN_BACK, Stage.ABANDONED, Stage.VOID, Stage.OFFICIAL);

    @TempDir
    Path root;

    private StagedAttempt day;
    private Visitor device;

    @BeforeEach
    void start() throws Exception {
        day = new StagedAttempt(root.resolve("day"));
        device = Demo.joined(day.app, "timekeeper", "", 83);
        assertEquals(
                200,
                device.form("/watch/take", Map.of("attempt", day.attempt, "slot", "1"))
                        .statusCode());
    }

    @AfterEach
    void stop() throws Exception {
        day.close();
    }

    @ParameterizedTest
    @EnumSource
    void what_decides_is_refused_in_words_and_what_was_seen_is_kept_and_moves_nothing(Stage stage) throws Exception {
        day.reach(stage);
        Path journal = root.resolve("day/journal.jsonl");
        Map<String, String> wrong = new LinkedHashMap<>();
        LiveFigures before = LiveFigures.of(day.laptop, day.attempt, day.title);
        for (Map.Entry<String, ObjectNode> tap : deciding(stage).entrySet()) {
            long size = Files.size(journal);
            JsonNode answer = device.tap(tap.getKey(), tap.getValue());
            String reason = answer.path("reason").asText();
            boolean says = reason.contains("This attempt is " + stage.words + ". ")
                    && (reason.contains("What can be done now: ") || reason.contains("Nothing more is done to it."));
            if (!answer.path("state").asText().equals("refused") || !says || Files.size(journal) != size) {
                wrong.put(tap.getKey(), answer.toString());
            }
        }
        for (Map.Entry<String, ObjectNode> tap : seen(stage)) {
            int lines = Files.readAllLines(journal).size();
            JsonNode answer = device.tap(tap.getKey(), tap.getValue());
            String added = String.join(
                    "\n", Files.readAllLines(journal).stream().skip(lines).toList());
            boolean kept = answer.path("state").asText().equals("saved") && !added.isEmpty();
            if (!kept || added.contains("attempt.moved") || added.contains("attempt.acted")) {
                wrong.put(tap.getKey() + tap.getValue(), answer + added);
            }
        }
        assertEquals(Map.of(), wrong, stage.name());
        LiveFigures after = LiveFigures.of(day.laptop, day.attempt, day.title);
        assertEquals(before.all(), after.all(), "no page says anything else");
        assertTrue(before.pagesWith("phase") >= 2, before.toString());
    }

    private Map<String, ObjectNode> deciding(Stage stage) throws Exception {
        Map<String, ObjectNode> taps = new LinkedHashMap<>();
        // of one that was given up a first crank turn asks to run it back
        if (!stage.acts().contains(AttemptAct.FIRST_TURN) && stage != Stage.ABANDONED) {
            taps.put("wind.begin", content().put("motor", day.motor));
        }
        if (!stage.acts().contains(AttemptAct.TAKE_SPARE)) {
            taps.put(
                    "attempt.take-motor",
                    content().put("motor", day.motor("B2")).put("seenMotor", day.motor));
        }
        if (stage != Stage.CALLED) {
            String post =
                    new FilledForms(day.laptop).row("stations", "Spare post").replaceFirst(".*/", "");
            taps.put("attempt.station", content().put("station", post));
        }
        return taps;
    }

    private List<Map.Entry<String, ObjectNode>> seen(Stage stage) {
        List<Map.Entry<String, ObjectNode>> taps = new ArrayList<>();
        if (NOT_WOUND.contains(stage)) {
            Stream.of("stepping-in", "stopped", "again", "stopped", "backed-off", "off-meter")
                    .forEach(phase -> taps.add(Map.entry("wind.phase", needle().put("phase", phase))));
            taps.add(Map.entry("wind.mark", needle().put("step", 1)));
            taps.add(Map.entry("wind.set", needle().put("division", 3)));
        }
        if (NOT_FLOWN.contains(stage)) {
            Stream.of("ready", "touched", "not-released", "still-flying")
                    .forEach(what -> taps.add(Map.entry("watch.mark", watch().put("what", what))));
            taps.add(Map.entry("watch.release", watch()));
            taps.add(Map.entry("watch.landing", watch().put("ms", 61_640)));
        }
        return taps;
    }

    private ObjectNode content() {
        return Json.MAPPER.createObjectNode().put("attempt", day.attempt);
    }

    private ObjectNode watch() {
        return content().put("slot", 1);
    }

    private ObjectNode needle() {
        return Json.MAPPER.createObjectNode().put("wind", day.wind()).put("elapsedMs", 95_000);
    }
}

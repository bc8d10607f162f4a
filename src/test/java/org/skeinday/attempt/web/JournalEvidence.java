package org.skeinday.attempt.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.skeinday.platform.record.Json;

/** What of flights may be learned from, told anew from a journal's lines alone, without a table or a rule of the program. */
final class JournalEvidence {
    private static final Map<String, String> FIELDS = Map.of(
            "launchTorqueNmm", "launch-torque",
            "remainingCrankTurns", "remaining",
            "durationMs", "time",
            "officialMs", "time");

    private final Map<String, Told> flights = new TreeMap<>();

    /** What the lines say of one flight. */
    private static final class Told {
        private final Map<String, Double> numbers = new TreeMap<>();
        private final Map<String, JsonNode> marks = new HashMap<>();
        private boolean touched;
        private boolean judged;
        private boolean leftOut;

        private boolean counts() {
            return !leftOut && (judged || !touched);
        }

        private boolean isOffered(String what, double number) {
            JsonNode mark = marks.get(what);
            return mark != null
                    && mark.path("number").asDouble() == number
                    && mark.path("source").asText().equals("offered")
                    && !mark.path("confirmed").asBoolean();
        }
    }

    private JournalEvidence() {}

    /** Of each flight that counts the numbers that do, for example {@code {launch-torque=3.5, time=108000.0}}. */
    static Map<String, String> of(Path folder) throws IOException {
        var lines = new JournalEvidence();
        for (String line : Files.readAllLines(folder.resolve("journal.jsonl"))) {
            for (JsonNode fact : Json.MAPPER.readTree(line).path("facts")) {
                lines.take(fact.path("kind").asText(), fact.path("body"));
            }
        }
        Map<String, String> counted = new TreeMap<>();
        lines.flights.forEach((id, told) -> {
            if (told.counts()) {
                Map<String, Double> numbers = new TreeMap<>(told.numbers);
                numbers.entrySet().removeIf(number -> told.isOffered(number.getKey(), number.getValue()));
                counted.put(id, numbers.toString());
            }
        });
        return counted;
    }

    private void take(String kind, JsonNode fact) {
        switch (kind) {
            case "flight.flown", "flight.changed" -> {
                Told told = told(fact.path("id").asText());
                numbers(told, fact, List.of("launchTorqueNmm", "remainingCrankTurns", "durationMs"));
                told.leftOut = !fact.path("valid").asBoolean();
            }
            case "attempt.imported" ->
                numbers(told(fact.path("id").asText()), fact, List.of("launchTorqueNmm", "officialMs"));
            case "attempt.noted" -> {
                Told told = told(fact.path("attemptId").asText());
                numbers(told, fact, List.of("remainingCrankTurns"));
                told.touched = !fact.path("contacts").asText("").isEmpty();
            }
            case "attempt.judged" -> {
                Told told = told(fact.path("attemptId").asText());
                told.judged = true;
                told.leftOut = !fact.path("reason").asText("").isEmpty();
            }
            case "flight.marked" ->
                told(fact.path("flightId").asText())
                        .marks
                        .put(fact.path("measured").asText(), fact);
            default -> {}
        }
    }

    private Told told(String flight) {
        return flights.computeIfAbsent(flight, id -> new Told());
    }

    private static void numbers(Told told, JsonNode fact, List<String> fields) {
        for (String field : fields) {
            told.numbers.remove(FIELDS.get(field));
            if (fact.path(field).isNumber()) {
                told.numbers.put(FIELDS.get(field), fact.path(field).asDouble());
            }
        }
    }
}

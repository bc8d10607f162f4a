package org.skeinday.attempt.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.skeinday.platform.record.Json;

/** Uses of motors, counted anew from a journal's lines alone, without a table or a class of the program. */
final class JournalUses {
    private static final double MM_PER_INCH = 25.4;
    private static final long TWELVE_HOURS_MS = 12 * 3_600_000L;

    private final Map<String, JsonNode> batches = new TreeMap<>();
    private final Map<String, JsonNode> motors = new TreeMap<>();
    private final Map<String, Double> ratios = new TreeMap<>();
    private final Map<String, Tried> attempts = new LinkedHashMap<>();
    private final Map<String, JsonNode> winds = new LinkedHashMap<>();
    private final Map<String, Integer> counted = new TreeMap<>();
    private final List<JsonNode> runBacks = new ArrayList<>();
    private final List<JsonNode> flights = new ArrayList<>();

    /** What the lines make of one attempt. */
    private static final class Tried {
        private String event = "";
        private String motor = "";
        private boolean wound;
        private boolean flown;
        private boolean runBackAfterAll;
        private int stop = -1;
    }

    private JournalUses() {}

    /** By tag, every motor. */
    static Map<String, Integer> of(Path folder) throws IOException {
        var uses = new JournalUses();
        for (String line : Files.readAllLines(folder.resolve("journal.jsonl"))) {
            for (JsonNode fact : Json.MAPPER.readTree(line).path("facts")) {
                uses.take(fact.path("kind").asText(), fact.path("body"));
            }
        }
        return uses.byTag();
    }

    private void take(String kind, JsonNode fact) {
        String attempt = fact.path("attemptId").asText();
        switch (kind) {
            case "event.added", "event.changed" ->
                ratios.put(id(fact), fact.path("winderRatio").asDouble());
            case "batch.added", "batch.changed" -> batches.put(id(fact), fact);
            case "motor.added", "motor.changed" -> motors.put(id(fact), fact);
            case "attempt.called", "attempt.imported" -> begun(fact);
            case "attempt.moved" ->
                moved(attempts.get(attempt), fact.path("state").asText());
            case "attempt.taken-back" ->
                attempts.get(attempt).flown = fact.path("state").asText().equals("released");
            case "attempt.motor" -> otherMotor(attempts.get(attempt), fact);
            case "attempt.wound" ->
                attempts.get(attempt).stop = fact.path("stopCountCrankTurns").asInt();
            case "attempt.run-back" -> runBack(attempts.get(attempt), fact);
            case "wind.begun" -> winds.put(id(fact), fact);
            case "wind.undone" -> winds.remove(fact.path("tapId").asText());
            case "wind.counted" ->
                counted.put(
                        fact.path("windId").asText(),
                        fact.path("stopCrankTurns").asInt());
            case "flight.flown" -> flights.add(fact);
            case "flight.changed" -> {
                flights.removeIf(flight -> id(flight).equals(id(fact)));
                flights.add(fact);
            }
            default -> {}
        }
    }

    private static String id(JsonNode fact) {
        return fact.path("id").asText();
    }

    private void begun(JsonNode fact) {
        var tried = new Tried();
        tried.event = fact.path("eventId").asText();
        tried.motor = fact.path("motorId").asText("");
        tried.wound = fact.hasNonNull("windingAtMs");
        tried.flown = Set.of("released", "landed", "closed", "void")
                .contains(fact.path("state").asText());
        tried.stop = fact.hasNonNull("stopCountCrankTurns")
                ? fact.path("stopCountCrankTurns").asInt()
                : -1;
        attempts.put(id(fact), tried);
    }

    private static void moved(Tried tried, String state) {
        tried.wound |= state.equals("winding");
        tried.flown |= state.equals("released");
    }

    private static void otherMotor(Tried tried, JsonNode fact) {
        tried.motor = fact.path("motorId").asText();
        tried.wound = false;
    }

    private void runBack(Tried tried, JsonNode fact) {
        runBacks.add(fact);
        boolean over = fact.path("state").asText().equals("scrubbed");
        tried.runBackAfterAll |= over;
        tried.wound &= over;
    }

    private Map<String, Integer> byTag() {
        Map<String, Integer> uses = new TreeMap<>();
        motors.values().forEach(m -> uses.put(tag(id(m)), m.path("uses").asInt()));
        Set<String> back = new HashSet<>();
        for (JsonNode b : runBacks) {
            back.add(b.path("windId").asText(""));
            if (b.path("use").asBoolean()) {
                uses.merge(tag(b.path("motorId").asText()), 1, Integer::sum);
            }
        }
        attempts.forEach(
                (id, tried) -> ofAttempt(id, tried, back).forEach((motor, turns) -> addUse(uses, motor, turns)));
        outside(uses);
        return uses;
    }

    private String tag(String motor) {
        return motors.get(motor).path("tag").asText();
    }

    /** Most turns that were on each motor; below zero where nobody counted. */
    private Map<String, Double> ofAttempt(String id, Tried tried, Set<String> back) {
        Map<String, Double> most = new TreeMap<>();
        for (JsonNode wind : winds.values()) {
            if (wind.path("attemptId").asText().equals(id) && !back.contains(id(wind))) {
                most.merge(wind.path("motorId").asText(), turns(wind), Math::max);
            }
        }
        boolean alone = most.isEmpty() || most.size() == 1 && most.containsKey(tried.motor);
        boolean wound = tried.wound || tried.flown || tried.stop > 0;
        if (!tried.motor.isEmpty() && !most.containsKey(tried.motor) && wound && !tried.runBackAfterAll) {
            most.put(tried.motor, alone && tried.stop >= 0 ? tried.stop * ratios.get(tried.event) : -1.0);
        } else if (alone && tried.stop >= 0 && most.containsKey(tried.motor)) {
            double ratio = ratios.get(tried.event);
            most.computeIfPresent(tried.motor, (m, turns) -> turns < 0 ? tried.stop * ratio : turns);
        }
        return most;
    }

    private double turns(JsonNode wind) {
        Integer stop = counted.get(id(wind));
        return stop == null ? -1 : stop * wind.path("ratio").asDouble();
    }

    /** Each flight goes with the first free wind of its motor in the half day before it. */
    private void outside(Map<String, Integer> uses) {
        List<JsonNode> free = new ArrayList<>();
        winds.values().stream()
                .filter(w -> w.path("attemptId").asText("").isEmpty()
                        || w.path("attemptId").isNull())
                .forEach(free::add);
        free.sort((a, b) -> Long.compare(a.path("atMs").asLong(), b.path("atMs").asLong()));
        flights.sort((a, b) ->
                Long.compare(a.path("flownAtMs").asLong(), b.path("flownAtMs").asLong()));
        for (JsonNode flight : flights) {
            long at = flight.path("flownAtMs").asLong();
            JsonNode own = null;
            for (JsonNode wind : free) {
                long begun = wind.path("atMs").asLong();
                boolean fits = wind.path("motorId").equals(flight.path("motorId"));
                if (own == null && fits && begun <= at && begun >= at - TWELVE_HOURS_MS) {
                    own = wind;
                }
            }
            free.remove(own);
            double typed = flight.hasNonNull("crankTurns")
                    ? flight.path("crankTurns").asInt()
                            * flight.path("winderRatio").asDouble()
                    : own == null ? -1 : turns(own);
            addUse(uses, flight.path("motorId").asText(), typed);
        }
        free.forEach(wind -> addUse(uses, wind.path("motorId").asText(), turns(wind)));
    }

    private void addUse(Map<String, Integer> uses, String motor, double turns) {
        double half = breakingTurns(motors.get(motor)) / 2;
        if (turns < 0 || turns > half) {
            uses.merge(tag(motor), 1, Integer::sum);
        }
    }

    /** Zero where it is not known: then any turn counts. */
    private double breakingTurns(JsonNode motor) {
        if (motor.hasNonNull("breakingTurns")) {
            return motor.path("breakingTurns").asDouble();
        }
        double k = batches.get(motor.path("batchId").asText()).path("kInchGram").asDouble(0);
        double inches = motor.path("loopMm").asDouble() / MM_PER_INCH;
        return k * Math.pow(inches, 1.5) / Math.sqrt(motor.path("massG").asDouble());
    }
}

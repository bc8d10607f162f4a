package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.Catalogue;
import org.skeinday.Demo;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.evidence.Measured;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.Writer;
import org.skeinday.platform.record.WriterSettings;

/** Random days written act by act: what is learned from is what the journal's lines say, living and built anew. */
@Timeout(300)
class RecordedEvidenceProperties {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-28T18:00:00Z"), ZoneId.of("UTC"));
    private static final int ACTS = 40;
    private static final String MODEL = "Reed One";

    @TempDir
    Path root;

    private Path folder;
    private ActStore record;
    private Writer writer;
    private int acts;
    private int cards;
    private final List<String> done = new ArrayList<>();
    private final List<String> flown = new ArrayList<>();
    private final Map<String, Map<String, String>> logged = new HashMap<>();

    private void open() throws Exception {
        record = ActStore.open(folder, Catalogue.projection(), CLOCK);
        writer = new Writer(record, Catalogue.actKinds(record), CLOCK, WriterSettings.normal(), (t, n) -> {});
    }

    private void close() throws Exception {
        writer.close();
        record.close();
    }

    private Answer send(String kind, Object content) {
        String id = String.format(Locale.ROOT, "%032x", ++acts);
        done.add(kind + " " + content);
        return writer.submit(new Act(id, kind, "laptop", "", CLOCK.instant(), Json.MAPPER.valueToTree(content)));
    }

    private void saved(String kind, Object content) {
        assertInstanceOf(Answer.Saved.class, send(kind, content), () -> done.toString());
    }

    private static String any(SplittableRandom random, String... of) {
        return of[random.nextInt(of.length)];
    }

    private void log(SplittableRandom random) {
        Map<String, String> cells = new HashMap<>(Map.of("event", "Saltmarsh Practice Evening", "model", MODEL));
        cells.putAll(Map.of("motor", any(random, "A1", "A2"), "crank turns", "210", "ratio", "10", "back off", "3"));
        cells.put("flown", String.format(Locale.ROOT, "2026-11-27 19:%02d", acts));
        cells.put("launch torque", String.format(Locale.ROOT, "0.%d in-ozf", 40 + random.nextInt(15)));
        cells.put("remaining", String.valueOf(30 + random.nextInt(20)));
        cells.put("time", "1:" + (30 + random.nextInt(25)));
        cells.put("valid", "yes");
        saved(
                "prepare.put",
                put(null, cells, random.nextInt(3) == 0 ? List.of("launch torque", "remaining") : List.of()));
        String act = String.format(Locale.ROOT, "%032x-", acts);
        String id = record.read(FlownStore::own).stream()
                .map(Flight::id)
                .filter(one -> one.startsWith(act))
                .findFirst()
                .orElseThrow();
        flown.add(id);
        logged.put(id, cells);
    }

    private static Map<String, Object> put(String id, Map<String, String> cells, List<String> offered) {
        Map<String, Object> put = new HashMap<>(Map.of("file", "flights.csv", "cells", cells, "zone", "UTC"));
        put.put("id", id);
        put.put("offered", offered);
        return put;
    }

    private void change(String id, String column, String text) {
        Map<String, String> cells = new HashMap<>(logged.get(id));
        cells.put(column, text);
        logged.put(id, cells);
        saved("prepare.put", put(id, cells, List.of()));
    }

    /** The rules allow so many attempts; a card more than that is refused, and nothing of it is there. */
    private void keyIn(SplittableRandom random) {
        String entry = record
                .read(tx -> EntryStore.ofEvent(tx, EventStore.all(tx).get(1).id()))
                .stream()
                .filter(e -> e.name().equals("Curlew"))
                .findFirst()
                .orElseThrow()
                .id();
        Map<String, String> fields = new HashMap<>(Map.of("attempt", String.valueOf(cards + 1), "model", MODEL));
        fields.putAll(Map.of("motor", any(random, "A1", "A2", "A4"), "stop-count", "201", "back-off", "3"));
        fields.putAll(Map.of("launch-torque", "0.45 in-ozf", "remaining", "22.5", "note", "keyed in"));
        String time = "1:4" + random.nextInt(10) + ".50";
        fields.putAll(Map.of("watch-1", time, "watch-2", time, "contacts", any(random, "", "touched the beam")));
        Map<String, Object> card = Map.of("entry", entry, "fields", fields, "zone", "UTC");
        if (send("paper.key-in", card) instanceof Answer.Saved) {
            cards++;
            record.read(FlownStore::own).stream()
                    .filter(f -> f.isAttempt() && !flown.contains(f.id()))
                    .forEach(f -> flown.add(f.id()));
        }
    }

    private void judge(SplittableRandom random) {
        String flight = any(random, flown.toArray(String[]::new));
        boolean counts = random.nextBoolean();
        Map<String, Object> word = new HashMap<>(Map.of("flight", flight, "contact", ""));
        word.put("verdict", counts ? "counts" : "left-out");
        word.put("reason", counts ? "" : "drifted into the net");
        saved("flight.counts", word);
        if (logged.containsKey(flight)) {
            logged.get(flight).put("valid", counts ? "yes" : "no");
            logged.get(flight).put("reason", counts ? "" : "drifted into the net");
        }
    }

    private void confirm(SplittableRandom random) {
        String id = any(random, flown.toArray(String[]::new));
        Flight flight = record.read(tx -> FlownStore.any(tx, id).orElseThrow());
        Measured what = random.nextBoolean() ? Measured.LAUNCH_TORQUE : Measured.REMAINING;
        saved(
                "flight.confirm",
                Map.of("flight", id, "numbers", Map.of(what.word(), Objects.requireNonNull(flight.number(what)))));
    }

    private void act(SplittableRandom random) {
        String logs = logged.isEmpty() ? "log" : "change";
        switch (any(
                random,
                "log",
                "log",
                "log",
                logs,
                "card",
                flown.isEmpty() ? "log" : "judge",
                flown.isEmpty() ? "log" : "confirm")) {
            case "log" -> log(random);
            case "change" ->
                change(
                        any(random, logged.keySet().stream().sorted().toArray(String[]::new)),
                        "launch torque",
                        String.format(Locale.ROOT, "0.%d in-ozf", 40 + random.nextInt(15)));
            case "card" -> keyIn(random);
            case "judge" -> judge(random);
            default -> confirm(random);
        }
    }

    /** As every fit, forecast and finding has it. */
    private Map<String, String> learned() {
        Map<String, String> learned = new TreeMap<>();
        for (Flight flight : record.read(FlownStore::own)) {
            flight.evidence().ifPresent(counted -> {
                Map<String, Double> numbers = new TreeMap<>();
                Stream.of(Measured.LAUNCH_TORQUE, Measured.REMAINING, Measured.TIME)
                        .forEach(what -> {
                            if (counted.number(what) != null) {
                                numbers.put(what.word(), counted.number(what));
                            }
                        });
                learned.put(flight.id(), numbers.toString());
            });
        }
        return learned;
    }

    private void same(String story) throws Exception {
        Map<String, String> lines = JournalEvidence.of(folder);
        Map<String, String> learned = learned();
        lines.keySet().retainAll(flown);
        learned.keySet().retainAll(flown);
        assertEquals(lines, learned, story);
    }

    private FlightForecast forecast() {
        return record.read(this::forecast);
    }

    private FlightForecast forecast(Tx tx) {
        ModelAdded model = ModelStore.all(tx).stream()
                .filter(m -> m.name().equals(MODEL))
                .findFirst()
                .orElseThrow();
        MotorAdded motor = MotorStore.all(tx).stream()
                .filter(m -> m.tag().equals("A1"))
                .findFirst()
                .orElseThrow();
        return new ForecastFlights(tx, MotorUseStore.all(tx)).forecast(model, motor, 0);
    }

    @ParameterizedTest
    @MethodSource("org.skeinday.Seeds#several")
    void what_is_learned_from_is_what_the_lines_say_and_a_change_moves_what_rests_on_it_alone(long seed)
            throws Exception {
        folder = Demo.into(root.resolve("day"));
        open();
        var random = new SplittableRandom(seed);
        for (int i = 0; i < ACTS; i++) {
            act(random);
            same("seed " + seed + ": " + done);
        }
        Map<String, String> before = learned();
        assertTrue(before.keySet().stream().anyMatch(flown::contains), "something counts: " + before);
        close();
        Files.delete(folder.resolve("skeinday.mv.db"));
        open();
        assertEquals(before, learned(), "built anew, seed " + seed);
        same("built anew, seed " + seed);
        changesWhatRestsOnIt(before, "seed " + seed);
        close();
    }

    private void changesWhatRestsOnIt(Map<String, String> before, String story) {
        String one =
                before.keySet().stream().filter(logged::containsKey).findFirst().orElseThrow();
        FlightForecast forecast = forecast();
        change(one, "launch torque", "0.61 in-ozf");
        Map<String, String> torque = learned();
        assertNotEquals(before.get(one), torque.get(one), story);
        assertEquals(forecast, forecast(), "no torque is in it, " + story);
        assertEquals(without(before, one), without(torque, one), story);
        change(one, "time", "2:05");
        assertNotEquals(forecast, forecast(), story);
        assertEquals(without(before, one), without(learned(), one), story);
    }

    private static Map<String, String> without(Map<String, String> all, String one) {
        Map<String, String> others = new TreeMap<>(all);
        others.remove(one);
        return others;
    }
}

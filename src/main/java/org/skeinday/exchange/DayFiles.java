package org.skeinday.exchange;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryModel;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.units.FlightTime;

/** A coach's files as facts: all of them, or every error with its place. */
public final class DayFiles {
    private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("yyyy-MM-dd H:mm");

    /** Columns by file, in the order in which the files are read. */
    private static final Map<String, List<String>> COLUMNS = columns();

    private final List<CellError> errors = new ArrayList<>();
    private final List<Named> facts = new ArrayList<>();
    private final Map<String, String> names = new LinkedHashMap<>();
    private final Map<String, String> events = new TreeMap<>();
    private final Map<String, String> models = new TreeMap<>();
    private final Map<String, String> batches = new TreeMap<>();
    private final Map<String, String> motors = new TreeMap<>();
    private final Map<String, String> entries = new TreeMap<>();
    private final IntFunction<String> newId;
    private final ZoneId zone;
    private final Duration shift;
    private int made;

    /** A fact and its kind. */
    public record Named(String kind, Object body) {}

    /** @param names person id to display name */
    public record Read(List<Named> facts, Map<String, String> names, List<CellError> errors) {}

    private DayFiles(IntFunction<String> newId, ZoneId zone, Duration shift) {
        this.newId = newId;
        this.zone = zone;
        this.shift = shift;
    }

    private static Map<String, List<String>> columns() {
        Map<String, List<String>> all = new LinkedHashMap<>();
        all.put(
                "event.csv",
                List.of(
                        "name",
                        "kind",
                        "day",
                        "hall",
                        "ceiling",
                        "attempts",
                        "window minutes",
                        "score",
                        "best of",
                        "timekeepers",
                        "take",
                        "if two",
                        "round",
                        "to",
                        "round watches first",
                        "minimum",
                        "winder ratio",
                        "lane"));
        all.put("models.csv", List.of("model", "team", "direction", "hook distance", "mass"));
        all.put("batches.csv", List.of("batch", "width", "thickness", "k", "opened"));
        all.put("motors.csv", List.of("tag", "batch", "team", "direction", "loop", "mass", "breaking turns", "uses"));
        all.put("entries.csv", List.of("event", "entry", "team", "division", "own", "models"));
        all.put("windows.csv", List.of("event", "entry", "opens", "closes"));
        all.put("crew.csv", List.of("name", "event", "tasks"));
        all.put(
                "flights.csv",
                List.of(
                        "event",
                        "model",
                        "motor",
                        "flown",
                        "crank turns",
                        "ratio",
                        "stop torque",
                        "launch torque",
                        "back off",
                        "time",
                        "remaining",
                        "note",
                        "valid",
                        "reason"));
        return all;
    }

    /** The files that are taken. */
    public static Set<String> known() {
        return COLUMNS.keySet();
    }

    /**
     * Reads the files.
     *
     * @param texts by file name
     * @param newId makes the k-th id of this act
     * @param zone of the days and times in the files
     * @param shift moves all of them, whole minutes
     */
    public static Read read(Map<String, String> texts, IntFunction<String> newId, ZoneId zone, Duration shift) {
        var files = new DayFiles(newId, zone, shift);
        for (String file : new java.util.TreeSet<>(texts.keySet())) {
            if (!COLUMNS.containsKey(file)) {
                files.errors.add(new CellError(
                        file, 0, "", "this file is not known; known are " + String.join(", ", COLUMNS.keySet())));
            }
        }
        if (texts.isEmpty()) {
            files.errors.add(new CellError(
                    "the folder",
                    0,
                    "",
                    "has no file that is known; known are " + String.join(", ", COLUMNS.keySet())));
        }
        files.each(texts, "event.csv", files::event);
        files.each(texts, "models.csv", files::model);
        files.each(texts, "batches.csv", files::batch);
        files.each(texts, "motors.csv", files::motor);
        files.each(texts, "entries.csv", files::entry);
        files.each(texts, "windows.csv", files::window);
        files.each(texts, "crew.csv", files::crew);
        files.each(texts, "flights.csv", files::flight);
        return new Read(List.copyOf(files.facts), files.names, List.copyOf(files.errors));
    }

    private void each(Map<String, String> texts, String file, Consumer<Row> reading) {
        String text = texts.get(file);
        if (text == null) {
            return;
        }
        Sheet sheet = Sheet.read(file, text, COLUMNS.getOrDefault(file, List.of()), errors);
        for (var record : sheet.rows()) {
            Row row = new Row(sheet, record, errors);
            try {
                reading.accept(row);
            } catch (IllegalArgumentException e) {
                row.error("", String.valueOf(e.getMessage())); // a value refused the row as a whole
            }
        }
    }

    private String id() {
        return newId.apply(made++);
    }

    private void take(Row row, String kind, java.util.function.Supplier<Object> body) {
        if (!row.isWrong()) {
            facts.add(new Named(kind, body.get()));
        }
    }

    /** Notes a new name; a second one of the same is an error. */
    private String fresh(Row row, String column, Map<String, String> ids, String key) {
        String name = row.required(column);
        String id = id();
        if (!name.isEmpty() && ids.putIfAbsent(key.isEmpty() ? name : key, id) != null) {
            row.error(column, "'" + name + "' is there twice; give each its own");
        }
        return id;
    }

    private void event(Row row) {
        String id = fresh(row, "name", events, "");
        String day = row.required("day");
        LocalDate date = day.isEmpty() ? null : row.read("day", LocalDate::parse);
        Row.Typed ceiling = row.length("ceiling");
        Row.Typed lane = row.length("lane");
        int attempts = row.whole("attempts", 1, 99, 3);
        int best = row.whole("best of", 1, 99, 1);
        if (best > attempts) {
            row.error(
                    "best of",
                    "the best " + best + " of " + attempts + " attempts cannot count; write at most " + attempts);
        }
        Long step = row.text("to").isEmpty()
                ? Long.valueOf(100)
                : row.read("to", t -> FlightTime.parse(t).millis());
        Long least = row.text("minimum").isEmpty()
                ? Long.valueOf(0)
                : row.read("minimum", t -> FlightTime.parse(t).millis());
        take(
                row,
                "event.added",
                () -> new EventAdded(
                        id,
                        row.text("name"),
                        row.word("kind", "visiting", List.of("visiting", "hosting", "practice")),
                        String.valueOf(
                                date == null
                                        ? day
                                        : date.atStartOfDay().plus(shift).toLocalDate()),
                        row.optional("hall"),
                        ceiling == null ? null : ceiling.si(),
                        ceiling == null ? null : ceiling.text(),
                        attempts,
                        row.whole("window minutes", 1, 1440, 12),
                        row.word("score", "best", List.of("best", "sum", "mean")),
                        best,
                        row.whole("timekeepers", 1, 3, 1),
                        row.word("take", "middle", List.of("middle", "mean", "longer", "shorter")),
                        row.word("if two", "longer", List.of("mean", "longer", "shorter")),
                        step == null ? 100 : step,
                        row.word("round", "down", List.of("down", "up", "nearest")),
                        row.yes("round watches first", false),
                        least == null ? 0 : least,
                        row.number("winder ratio", 0.1, 100, 10),
                        lane == null ? null : lane.si(),
                        lane == null ? null : lane.text()));
    }

    private void model(Row row) {
        String id = fresh(row, "model", models, "");
        Row.Typed hooks = needed(row, "hook distance", row.length("hook distance"));
        Row.Typed mass = row.mass("mass");
        take(
                row,
                "model.added",
                () -> new ModelAdded(
                        id,
                        row.text("model"),
                        row.required("team"),
                        direction(row),
                        si(hooks),
                        text(hooks),
                        mass == null ? null : mass.si(),
                        mass == null ? null : mass.text()));
    }

    private static String direction(Row row) {
        return row.word("direction", "cw", List.of("cw", "acw"));
    }

    private static Row.@Nullable Typed needed(Row row, String column, Row.@Nullable Typed value) {
        if (row.text(column).isEmpty()) {
            row.required(column);
        }
        return value;
    }

    private static double si(Row.@Nullable Typed typed) {
        return typed == null ? 0 : typed.si();
    }

    private static String text(Row.@Nullable Typed typed) {
        return typed == null ? "" : typed.text();
    }

    private void batch(Row row) {
        String id = fresh(row, "batch", batches, "");
        Row.Typed width = row.length("width");
        Row.Typed thickness = row.length("thickness");
        Double k = row.number("k", 20, 80);
        take(
                row,
                "batch.added",
                () -> new BatchAdded(
                        id,
                        row.text("batch"),
                        width == null ? null : width.si(),
                        width == null ? null : width.text(),
                        thickness == null ? null : thickness.si(),
                        thickness == null ? null : thickness.text(),
                        k,
                        row.optional("opened")));
    }

    private void motor(Row row) {
        String id = fresh(row, "tag", motors, "");
        String batch = row.named("batch", batches, "batch");
        Row.Typed loop = needed(row, "loop", row.length("loop"));
        Row.Typed mass = needed(row, "mass", row.mass("mass"));
        Integer breaking = row.whole("breaking turns", 1, 100_000);
        int uses = row.whole("uses", 0, 1000, 0);
        String direction = direction(row);
        String team = row.required("team");
        take(
                row,
                "motor.added",
                () -> new MotorAdded(
                        id,
                        row.text("tag"),
                        batch,
                        team,
                        direction,
                        si(loop),
                        text(loop),
                        si(mass),
                        text(mass),
                        breaking,
                        uses));
    }

    private String event(Row row, String column) {
        if (row.text(column).isEmpty() && events.size() == 1) {
            return events.values().iterator().next();
        }
        return row.named(column, events, "event");
    }

    private void entry(Row row) {
        String event = event(row, "event");
        String id = fresh(row, "entry", entries, event + "/" + row.text("entry"));
        String team = row.required("team");
        boolean own = row.yes("own", false);
        take(
                row,
                "entry.added",
                () -> new EntryAdded(id, event, row.text("entry"), team, row.optional("division"), own));
        for (String name : row.text("models").split("[|]", -1)) {
            String model = models.get(name.strip());
            if (!name.isBlank() && model == null) {
                row.error("models", "there is no model '" + name.strip() + "'; separate several by |");
            } else if (model != null) {
                take(row, "entry.model", () -> new EntryModel(id, model));
            }
        }
    }

    private @Nullable Long at(Row row, String column) {
        String text = row.required(column);
        return text.isEmpty()
                ? null
                : row.read(
                        column,
                        t -> LocalDateTime.parse(t, AT)
                                .atZone(zone)
                                .plus(shift)
                                .toInstant()
                                .toEpochMilli());
    }

    private void window(Row row) {
        String event = event(row, "event");
        String name = row.text("entry");
        String entry = name.isEmpty() ? null : entries.get(event + "/" + name);
        if (!name.isEmpty() && entry == null) {
            row.error("entry", "there is no entry '" + name + "' in this event");
        }
        Long opens = at(row, "opens");
        Long closes = at(row, "closes");
        if (opens == null || closes == null) {
            return;
        }
        if (closes <= opens) {
            row.error("closes", "the window must close after it opens");
        }
        String id = id();
        take(row, "window.added", () -> new WindowAdded(id, event, entry, opens, closes));
    }

    private void crew(Row row) {
        String name = row.required("name");
        String event = row.text("event").isEmpty() ? "" : row.named("event", events, "event");
        String id = id();
        String tasks = row.text("tasks").toLowerCase(java.util.Locale.ROOT).replaceAll("[|;\\s]+", ",");
        List<String> known = CrewAdded.ROLES.stream()
                .filter(List.of(tasks.split(","))::contains)
                .toList();
        if (!tasks.isEmpty() && known.size() != tasks.split(",").length) {
            row.error(
                    "tasks",
                    "'" + row.text("tasks") + "' has a task that is not known; write "
                            + String.join(" | ", CrewAdded.ROLES));
        }
        names.put(id, name);
        take(row, "crew.added", () -> new CrewAdded(id, event, String.join(",", known)));
    }

    private void flight(Row row) {
        String event = event(row, "event");
        String model = row.text("model").isEmpty() ? null : row.named("model", models, "model");
        String motor = row.named("motor", motors, "motor");
        Long flown = at(row, "flown");
        Integer turns = row.whole("crank turns", 1, 100_000);
        double ratio = row.number("ratio", 0.1, 100, 10);
        Row.Typed stop = row.torque("stop torque");
        Row.Typed launch = row.torque("launch torque");
        Double backOff = row.number("back off", 0, 10_000);
        Double remaining = row.number("remaining", 0, 100_000);
        String time = row.required("time");
        FlightTime duration = time.isEmpty() ? null : row.read("time", FlightTime::parse);
        boolean valid = row.yes("valid", true);
        String id = id();
        if (flown == null || duration == null) {
            return;
        }
        take(
                row,
                "flight.flown",
                () -> new PracticeFlown(
                        id,
                        event,
                        model,
                        motor,
                        flown,
                        turns,
                        ratio,
                        stop == null ? null : stop.si(),
                        stop == null ? null : stop.text(),
                        launch == null ? null : launch.si(),
                        launch == null ? null : launch.text(),
                        backOff,
                        duration.millis(),
                        remaining,
                        row.optional("note"),
                        valid,
                        row.optional("reason")));
    }
}

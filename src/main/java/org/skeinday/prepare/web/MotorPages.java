package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.Terms;
import org.skeinday.exchange.CsvText;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.CutList;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorPlace;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.prepare.FlightLog;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.TypedUnits;
import org.skeinday.prepare.action.PutRow;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;

/** Making motors, their inspection, and the flight log that rules ask for. */
public final class MotorPages {
    /** A comma right between two digits is a decimal one. */
    private static final String BETWEEN_LOOPS = "[;|]|,(?!\\d)|(?<!\\d),";

    private final PrepareContext desk;

    public MotorPages(PrepareContext desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.advice(
                "/making", Role.HELPER, ctx -> desk.page().show(ctx, "Make motors", "prepare/making.jte", making(ctx)));
        routes.get(
                "/inspection",
                Role.CAPTAIN,
                ctx -> desk.page().show(ctx, "Inspection", "prepare/inspection.jte", inspection("", Map.of())));
        routes.post("/inspection", Role.CAPTAIN, this::inspect);
        routes.advice("/log.csv", Role.CAPTAIN, this::logFile);
        routes.advice("/log", Role.CAPTAIN, ctx -> desk.page().show(ctx, "Flight log", "prepare/log.jte", log()));
    }

    private static String asked(Context ctx, String name, String first) {
        String value = ctx.queryParam(name);
        return value == null ? first : value.strip();
    }

    private MakingView making(Context ctx) {
        String loops = asked(ctx, "loops", "");
        String knot = asked(ctx, "knot", "20 mm");
        String piece = asked(ctx, "piece", "");
        String weighs = asked(ctx, "weighs", "");
        UnitSystem units = ReaderUnits.of(ctx);
        String unit = shown(ctx, "unit", List.of("mm", "in"), units.lengthUnit());
        String pieceUnit = shown(ctx, "piece-unit", List.of("m", "ft"), units.roomUnit());
        List<MakingView.Cut> cuts = List.of();
        String problem = "";
        if (!loops.isEmpty() && !piece.isEmpty() && !weighs.isEmpty()) {
            try {
                var typed = new TypedStrip(loops, knot, unit, Length.parse(piece, pieceUnit), Mass.parse(weighs, "g"));
                cuts = cuts(typed, units);
            } catch (IllegalArgumentException e) {
                problem = String.valueOf(e.getMessage());
            }
        }
        return new MakingView(loops, knot, piece, weighs, problem, cuts, pairs(desk.day(), units), unit, pieceUnit);
    }

    /** The unit that stood beside the fields when they were filled in; the team's where nobody has filled them in. */
    private static String shown(Context ctx, String name, List<String> known, String now) {
        String asked = asked(ctx, name, now);
        return known.contains(asked) ? asked : now;
    }

    /** @param unit of loops and knot without one */
    private record TypedStrip(String loops, String knot, String unit, Length piece, Mass weighs) {}

    private static List<MakingView.Cut> cuts(TypedStrip typed, UnitSystem units) {
        List<Length> wanted = Arrays.stream(typed.loops().split(BETWEEN_LOOPS, -1))
                .map(String::strip)
                .map(loop -> Length.parse(loop, typed.unit()))
                .toList();
        double gramsPerMetre = typed.weighs().grams() / typed.piece().metres();
        return CutList.of(wanted, Length.parse(typed.knot(), typed.unit()), gramsPerMetre).stream()
                .map(c -> new MakingView.Cut(units.length(c.loop()), units.length(c.strip()), units.mass(c.weighs())))
                .toList();
    }

    /** Of each batch by itself: two batches never make a pair. */
    private static List<MakingView.Pair> pairs(Day day, UnitSystem units) {
        List<MakingView.Pair> pairs = new ArrayList<>();
        for (BatchAdded batch : day.batches()) {
            Map<String, String> tags = new LinkedHashMap<>();
            List<CutList.Weighed> weighed = day.motors().stream()
                    .filter(m -> m.batchId().equals(batch.id()))
                    .map(m -> {
                        tags.put(m.id(), m.tag());
                        return new CutList.Weighed(m.id(), Mass.ofGrams(m.massG()));
                    })
                    .toList();
            CutList.pairs(weighed)
                    .forEach(pair -> pairs.add(new MakingView.Pair(
                            batch.name(),
                            tags.get(pair.lighter().motorId()) + " and "
                                    + tags.get(pair.heavier().motorId()),
                            units.mass(pair.lighter().mass()) + ", "
                                    + units.mass(pair.heavier().mass()),
                            units.mass(pair.difference()))));
        }
        return pairs;
    }

    private InspectionView inspection(String motor, Map<String, String> wrong) {
        Day day = desk.day();
        Optional<EventAdded> event = desk.atHand();
        Terms terms = day.termsOf(event.map(EventAdded::id).orElse(""));
        List<InspectionView.Row> rows = day.motors().stream()
                .map(m -> row(day, m, terms, m.id().equals(motor) ? wrong : Map.of()))
                .sorted(java.util.Comparator.comparing(
                                (InspectionView.Row r) -> r.declaredBy().isEmpty())
                        .thenComparing(InspectionView.Row::tag))
                .toList();
        String limit = terms.motorLimitTyped() == null ? "" : terms.motorLimitTyped();
        return new InspectionView(event.map(EventAdded::name).orElse(""), limit, terms.reinspection(), rows);
    }

    private InspectionView.Row row(Day day, MotorAdded motor, Terms terms, Map<String, String> wrong) {
        Optional<MotorInspected> inspected = day.more().inspections().stream()
                .filter(i -> i.motorId().equals(motor.id()))
                .findFirst();
        double grams = inspected.map(MotorInspected::massG).orElse(motor.massG());
        String margin =
                terms.motorLimitG() == null ? "" : String.format(Locale.ROOT, "%+.3f g", terms.motorLimitG() - grams);
        String declared = String.join(
                ", ",
                day.more().entryMotors().stream()
                        .filter(m -> m.motorId().equals(motor.id()))
                        .flatMap(m -> day.entries().stream().filter(e -> e.id().equals(m.entryId())))
                        .map(e -> e.name())
                        .distinct()
                        .toList());
        return new InspectionView.Row(
                motor.id(),
                motor.tag(),
                declared,
                motor.massTyped(),
                inspected.map(i -> i.massTyped() == null ? "" : i.massTyped()).orElse(""),
                margin,
                margin.startsWith("-"),
                inspected.map(MotorInspected::motorPlace).orElse(MotorPlace.TEAM),
                RowForm.json(cells(day, motor.id())),
                wrong.isEmpty() ? "" : String.join(" ", wrong.values()));
    }

    private Map<String, String> cells(Day day, String motor) {
        return DayRows.one(day, desk.zone(), Sheet.MOTORS.file(), motor)
                .map(DayRows.RowText::cells)
                .orElse(Map.of());
    }

    /** The motor's own row with what was found put in. */
    private void inspect(Context ctx) {
        String motor = RowForm.param(ctx, "motor");
        Map<String, String> cells = new LinkedHashMap<>(cells(desk.day(), motor));
        cells.put("inspected mass", mass(RowForm.param(ctx, "mass")));
        cells.put("place", RowForm.param(ctx, "place"));
        cells.put("inspected", Lists.minute(desk.clock()));
        var put = new PutRow.Put(
                Sheet.MOTORS.file(),
                motor,
                cells,
                RowForm.cells(RowForm.param(ctx, "seen")),
                desk.zone().getId());
        Answer answer = desk.forms().submit(ctx, "prepare.put", put);
        String words = FormActs.words(ctx, answer);
        desk.page()
                .fragment(
                        ctx,
                        "prepare/_inspection.jte",
                        inspection(motor, words.isEmpty() ? Map.of() : Map.of("", words)));
    }

    private static String mass(String typed) {
        return DayRows.columns(Sheet.MOTORS.file()).stream()
                .filter(column -> column.name().equals("inspected mass"))
                .map(column -> TypedUnits.cell(column, typed.strip(), UnitSystem.METRIC.massUnit()))
                .findFirst()
                .orElse(typed);
    }

    /** Flights with motors of the teams that the coach enters; all, when none is entered. */
    private static List<PracticeFlown> own(Day day, Optional<EventAdded> event) {
        List<String> teams = day.entries().stream()
                .filter(e ->
                        e.own() && e.eventId().equals(event.map(EventAdded::id).orElse("")))
                .map(e -> e.team())
                .toList();
        return day.flights().stream()
                .filter(f -> teams.isEmpty()
                        || day.motors().stream().anyMatch(m -> m.id().equals(f.motorId()) && teams.contains(m.team())))
                .toList();
    }

    private void logFile(Context ctx) {
        LogView log = log();
        List<List<String>> rows = new ArrayList<>();
        rows.add(Stream.concat(Stream.of("flown"), log.columns().stream()).toList());
        rows.addAll(log.rows());
        ctx.contentType("text/csv; charset=utf-8");
        ctx.header("Content-Disposition", "attachment; filename=\"flight-log.csv\"");
        ctx.result(CsvText.of(rows));
    }

    private LogView log() {
        Day day = desk.day();
        Optional<EventAdded> event = desk.atHand();
        Terms terms = day.termsOf(event.map(EventAdded::id).orElse(""));
        List<String> columns = terms.columnsOfLog().isEmpty() ? Terms.LOG_COLUMNS : terms.columnsOfLog();
        List<PracticeFlown> own = own(day, event);
        List<PracticeFlown> taken = FlightLog.taken(terms, own);
        LogLines lines = new LogLines(day, desk.zone(), desk.flown());
        return new LogView(
                event.map(EventAdded::name).orElse(""),
                terms.logFlights(),
                terms.logSignedBy() == null ? "" : terms.logSignedBy(),
                FlightLog.lacks(terms, own, lines::when, lines::isMeasured),
                columns,
                taken.stream().map(f -> lines.row(f, columns)).toList());
    }
}

package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.FlightWorth;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelNote;
import org.skeinday.contest.store.StationStore;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.action.PutRow;
import org.skeinday.units.FlightTime;
import org.skeinday.units.PlainNumber;

/** Practice: a flight in one row and twenty seconds, the last values offered. */
public final class PracticePages {
    private static final List<String> ROW = List.of(
            "model",
            "motor",
            "crank turns",
            "launch torque",
            "back off",
            "time",
            "remaining",
            "note",
            "valid",
            "reason");
    /** What differs from flight to flight, and so is not offered again. */
    private static final List<String> FRESH = List.of("time", "remaining", "note", "valid", "reason", "flown");

    private static final Set<String> COLUMNS =
            DayRows.columns(Sheet.FLIGHTS.file()).stream().map(Column::name).collect(Collectors.toUnmodifiableSet());

    /** What is measured anew on each flight, and so is no measurement as long as the form only proposes it. */
    private static final List<String> MEASURED = List.of("crank turns", "launch torque", "back off");

    /** Of the winder, and no matter of the last flight: another place may be at work by now. */
    private static final String RATIO = "ratio";

    private static final String IT_WAS_SO = "Saved: it was so.";
    private static final int SHOWN = 12;
    /** Said of a flight that belongs to an evening of another day. */
    private static final String EARLIER = "earlier";

    private final PrepareContext desk;

    public PracticePages(PrepareContext desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.advice(
                "/practice",
                Role.HELPER,
                ctx -> desk.page()
                        .show(
                                ctx,
                                "Practice",
                                "prepare/practice.jte",
                                view(ctx, "", "", Map.of(), Map.of(), Set.of())));
        routes.post("/practice", Role.HELPER, this::log);
        routes.post("/practice/so", Role.HELPER, this::confirm);
        routes.post("/practice/begin", Role.HELPER, this::begin);
    }

    private static Optional<EventAdded> practice(Day day) {
        return day.events().stream().filter(EventAdded::ofPractice).reduce((a, b) -> b);
    }

    private boolean isToday(EventAdded event) {
        return event.day().equals(LocalDate.now(desk.clock()).toString());
    }

    /** An evening that was left open takes no flight of another day by itself; what was typed stays. */
    private void ask(Context ctx, EventAdded earlier, Map<String, String> typed) {
        ctx.status(422);
        String problem = "Nothing was saved yet: " + earlier.name() + " is of another day, " + earlier.day()
                + ". Begin practice today above, or tick below that this flight belongs to it.";
        desk.page()
                .fragment(
                        ctx,
                        "prepare/_practice.jte",
                        view(ctx, "", problem, typed, Map.of(), Set.copyOf(ctx.formParams("so"))));
    }

    private void begin(Context ctx) {
        String today = LocalDate.now(desk.clock()).toString();
        var put = new PutRow.Put(
                Sheet.EVENTS.file(),
                null,
                Map.of("name", "Practice " + today, "kind", DayKind.PRACTICE.word(), "day", today),
                null,
                desk.zone().getId());
        String words = FormActs.words(ctx, desk.forms().submit(ctx, "prepare.put", put));
        desk.page().fragment(ctx, "prepare/_practice.jte", view(ctx, "", words, Map.of(), Map.of(), Set.of()));
    }

    private void log(Context ctx) {
        Map<String, String> typed = RowForm.typed(ctx, Sheet.FLIGHTS);
        Day day = desk.day();
        Optional<EventAdded> earlier = practice(day).filter(event -> !isToday(event));
        if (earlier.isPresent() && !RowForm.param(ctx, EARLIER).equals("yes")) {
            ask(ctx, earlier.get(), typed);
            return;
        }
        Map<String, String> cells = new LinkedHashMap<>(last(day));
        FRESH.forEach(cells::remove);
        cells.remove("stop torque");
        cells.keySet().retainAll(COLUMNS); // where its numbers came from is not the last one's matter
        ROW.forEach(column -> cells.put(column, typed.getOrDefault(column, "")));
        Optional<String> ratio = ratioAtWork();
        ratio.ifPresent(turns -> cells.put(RATIO, turns));
        practice(day).ifPresent(event -> cells.put("event", event.name()));
        cells.put("flown", DayRows.moment(desk.clock().millis(), desk.zone()));
        var put = new PutRow.Put(
                Sheet.FLIGHTS.file(),
                null,
                cells,
                null,
                desk.zone().getId(),
                offered(ctx),
                RowForm.param(ctx, AskedOnce.FIELD));
        Answer answer = desk.forms().submit(ctx, "prepare.put", put);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            String saved = "Saved: " + typed.get("motor") + ", " + time(typed.getOrDefault("time", ""))
                    + (ratio.isPresent() || !cells.containsKey(RATIO)
                            ? ""
                            : "; " + cells.get(RATIO) + " motor turns to a crank turn, as on the flight before");
            desk.page().fragment(ctx, "prepare/_practice.jte", view(ctx, saved, "", Map.of(), Map.of(), Set.of()));
            return;
        }
        Map<String, String> wrong = answer instanceof Answer.Refused refused ? refused.fields() : Map.of();
        boolean beside = wrong.keySet().stream().anyMatch(ROW::contains);
        String problem = beside ? "Nothing was saved yet: see the marked fields." : words;
        desk.page()
                .fragment(
                        ctx,
                        "prepare/_practice.jte",
                        view(ctx, "", problem, typed, wrong, Set.copyOf(ctx.formParams("so"))));
    }

    /** Of the winder at the place at work; empty where nobody counted its turns. */
    private Optional<String> ratioAtWork() {
        return desk.record()
                .read(StationStore::atWork)
                .flatMap(place -> Optional.ofNullable(place.winderRatio()))
                .map(PlainNumber::of);
    }

    /** Columns whose text is what the form proposed, without those of which somebody said that it was so this time. */
    private static List<String> offered(Context ctx) {
        List<String> so = ctx.formParams("so");
        return MEASURED.stream()
                .filter(column -> {
                    String name = Fields.parameter(column);
                    String text = RowForm.param(ctx, "offered-" + name).strip();
                    return !text.isEmpty()
                            && text.equals(RowForm.param(ctx, name).strip())
                            && !so.contains(name);
                })
                .toList();
    }

    /** What a form proposed, or what is unlikely, was so. */
    private void confirm(Context ctx) {
        String id = RowForm.param(ctx, "flight");
        ForecastWords before = ForecastWords.of(desk.record(), id);
        FlightWorth.Confirmed confirmed;
        try {
            confirmed = new FlightWorth.Confirmed(id, FlightWorth.numbers(ctx.formParams("number")));
        } catch (IllegalArgumentException e) {
            throw Refusal.malformed("That is no number of a flight. Load the page again and repeat it.");
        }
        String problem = FormActs.words(ctx, desk.forms().submit(ctx, "flight.confirm", confirmed));
        String changed = before.changed(ForecastWords.of(desk.record(), id));
        String saved = problem.isEmpty() ? (IT_WAS_SO + " " + changed).strip() : "";
        desk.page().fragment(ctx, "prepare/_practice.jte", view(ctx, saved, problem, Map.of(), Map.of(), Set.of()));
    }

    /** What was saved, as the list below has it. */
    private static String time(String typed) {
        return FlightTime.parse(typed).text(0);
    }

    /** The last flight's row: tonight's next one is most like it. */
    private Map<String, String> last(Day day) {
        return day.flights().stream()
                .max(Comparator.comparingLong(PracticeFlown::flownAtMs))
                .flatMap(last -> DayRows.one(day, desk.zone(), Sheet.FLIGHTS.file(), last.id()))
                .map(DayRows.RowText::cells)
                .orElse(Map.of());
    }

    private PracticeView view(
            Context ctx,
            String saved,
            String problem,
            Map<String, String> typed,
            Map<String, String> wrong,
            Set<String> so) {
        Day day = desk.day();
        Map<String, String> proposed = new LinkedHashMap<>(last(day));
        FRESH.forEach(proposed::remove);
        Map<String, String> values = new LinkedHashMap<>(proposed);
        values.putAll(typed);
        List<FormView.Field> fields = new Fields(Sheet.FLIGHTS, day, ReaderUnits.of(ctx))
                .of(values, wrong).stream()
                        .filter(f ->
                                ROW.stream().anyMatch(c -> Fields.parameter(c).equals(f.name())))
                        .sorted(Comparator.comparingInt(f -> at(f.name())))
                        .map(f -> offering(f, proposed, so))
                        .toList();
        Optional<EventAdded> event = practice(day);
        LogLines lines = new LogLines(day, desk.zone(), desk.flown());
        return new PracticeView(
                event.map(EventAdded::name).orElse(""),
                event.filter(this::isToday).isPresent(),
                saved,
                problem,
                day.motors().isEmpty(),
                fields,
                wrong.getOrDefault(AskedOnce.FIELD, ""),
                saved.startsWith(IT_WAS_SO),
                day.flights().stream()
                        .sorted(Comparator.comparingLong(PracticeFlown::flownAtMs)
                                .reversed())
                        .limit(SHOWN)
                        .map(f -> flight(lines, f))
                        .toList(),
                day.more().notes().stream().limit(SHOWN).map(n -> note(day, n)).toList());
    }

    private static int at(String parameter) {
        return ROW.stream().map(Fields::parameter).toList().indexOf(parameter);
    }

    private static FormView.Field offering(FormView.Field field, Map<String, String> proposed, Set<String> so) {
        return MEASURED.stream()
                .filter(column -> Fields.parameter(column).equals(field.name()))
                .map(column -> proposed.getOrDefault(column, ""))
                .filter(text -> !text.isEmpty())
                .findFirst()
                .map(text -> field.offering(text, so.contains(field.name())))
                .orElse(field);
    }

    private static PracticeView.Flight flight(LogLines lines, PracticeFlown flight) {
        return new PracticeView.Flight(
                flight.id(),
                "/prepare/flights/row/" + flight.id(),
                lines.when(flight),
                lines.cell(flight, "model"),
                lines.cell(flight, "motor"),
                lines.cell(flight, "turns"),
                lines.cell(flight, "time"),
                flight.valid() ? lines.cell(flight, "note") : "not valid: " + flight.invalidReason(),
                lines.unconfirmed(flight));
    }

    private PracticeView.Note note(Day day, ModelNote note) {
        String model = day.models().stream()
                .filter(m -> m.id().equals(note.modelId()))
                .map(m -> m.name())
                .findFirst()
                .orElse("");
        String ready =
                note.readyAtMs() != null && note.readyAtMs() > desk.clock().millis() ? " (curing)" : "";
        String when = java.time.format.DateTimeFormatter.ofPattern("d MMM HH:mm", java.util.Locale.ROOT)
                .format(java.time.Instant.ofEpochMilli(note.atMs()).atZone(desk.zone()));
        return new PracticeView.Note(model, when, note.kind() + ": " + note.note() + ready);
    }
}

package org.skeinday.exchange;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.TimedBy;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;

/** {@code attempts.csv}: official tries as they stand. */
final class AttemptsFile implements DayFile {
    static final int MOST_ATTEMPTS = 999;

    private static final Set<State> GIVEN_UP = EnumSet.of(State.SCRUBBED, State.VOID);

    private static final List<Column> OF_FLIGHT = List.of(
            Column.text("event", 120),
            Column.text("entry", 120).filled(),
            Column.plain("attempt").filled(),
            Column.text("model", 120),
            Column.text("motor", 40),
            Column.choice("state", "", AttemptImported.STATES).filled(),
            Column.plain("called"),
            Column.plain("winding"),
            Column.plain("holding"),
            Column.plain("released"),
            Column.plain("landed"),
            Column.plain("ended"),
            Column.plain("stop count"),
            Column.torque("launch torque"),
            Column.time("official"),
            Column.text("how", 1000),
            Column.text("reason", 400),
            Column.choice("flown again", "", List.of("yes", "no")),
            Column.text("spare", 40),
            Column.torque("peak torque"),
            Column.plain("back off"),
            Column.plain("remaining"),
            Column.text("contacts", 400),
            Column.text("note", 400),
            Column.time("announced"),
            Column.plain("announced at"),
            Column.choice("from paper", "", List.of("yes", "no")),
            Column.plain("quiet from"),
            Column.plain("quiet to"),
            Column.text("says nothing", 400),
            Column.time("contact at"),
            Column.time("caught at"),
            Column.time("free again"),
            Column.choice("caught by", "", Aloft.CAUGHT_BY),
            Column.choice("still held", "", List.of("yes", "no")),
            Column.choice("steered", "", Aloft.STEERED),
            Column.choice(AttemptNotes.COUNTS, "", AttemptNotes.WHETHER_IT_COUNTS));

    private static final List<Column> COLUMNS = Stream.concat(
                    HeldCells.after(FlightMarks.after(Stream.concat(OF_FLIGHT.stream(), AttemptPlaces.COLUMNS.stream())
                                    .toList()))
                            .stream(),
                    Stream.of(UsesOfRows.column()))
            .toList();

    @Override
    public String name() {
        return "attempts.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String event = context.event(row);
        String entry = context.entry(row, event);
        Integer number = Numbers.whole(row, "attempt", 1, MOST_ATTEMPTS);
        String model = row.named("model", context.models);
        String motor = row.named("motor", context.motors);
        String state = row.word("state");
        Long called = context.moments.read(row, "called");
        Long winding = context.moments.read(row, "winding");
        Long holding = context.moments.read(row, "holding");
        Long released = context.moments.read(row, "released");
        Long landed = context.moments.read(row, "landed");
        Long ended = context.moments.read(row, "ended");
        Integer stop = Numbers.whole(row, "stop count", 0, 100_000);
        Quantity launch = Quantity.Kind.TORQUE.read(row, "launch torque");
        Long official = Numbers.time(row, "official", 0, ReadingTaken.LONGEST_MS);
        if (!state.isEmpty()) {
            checkEnd(row, State.of(state));
        }
        String id = context.newId();
        if (number == null || entry.isEmpty()) {
            return;
        }
        context.attempts.add(row, "attempt", ImportContext.key(entry, number), number + " of " + row.text("entry"), id);
        context.numbers.computeIfAbsent(entry, e -> new TreeMap<>()).putIfAbsent(number, Optional.of(row));
        Supplier<AttemptImported> attempt = () -> new AttemptImported(
                id,
                event,
                entry,
                number,
                model.isEmpty() ? null : model,
                motor.isEmpty() ? null : motor,
                state,
                called,
                winding,
                holding,
                released,
                landed,
                ended,
                stop,
                Quantity.siOrNull(launch),
                Quantity.textOrNull(launch),
                official,
                row.optional("reason"),
                row.yes("flown again"));
        context.take(row, "attempt.imported", attempt::get);
        AttemptNotes.take(row, context, id);
        context.uses.take(row, id, motor);
        Optional<AttemptStation> place = AttemptPlaces.take(row, context, id);
        if (HeldCells.take(row, context, id) && !row.isWrong()) {
            Double off = Numbers.decimal(row, "back off", 0, 10_000);
            WindOfRow.take(row, context, attempt.get(), place, context.ratios.getOrDefault(event, 10.0), off);
        }
        FlightMarks.take(
                row,
                context,
                id,
                usual(row.yes("from paper")),
                what -> number(
                        what,
                        stop,
                        Quantity.siOrNull(launch),
                        official,
                        new Noted(
                                Quantity.siOrNull(Quantity.Kind.TORQUE.read(row, "peak torque")),
                                Numbers.decimal(row, "back off", 0, 10_000),
                                Numbers.decimal(row, "remaining", 0, 100_000))));
        if (!row.isEmpty("how") && ended != null && official != null) {
            context.take(
                    row, "attempt.closed", () -> new AttemptClosed(id, ended, official, row.text("how"), null, null));
        }
    }

    /** A closed attempt has its time, one given up its reason, and no other has either. */
    private static void checkEnd(Row row, State state) {
        boolean closed = state == State.CLOSED;
        only(row, "official", closed, state, "write the official time");
        only(row, "reason", GIVEN_UP.contains(state), state, "write why it was given up");
        if (row.yes("flown again") && state != State.VOID) {
            row.error(
                    "flown again",
                    "an attempt that is " + state.word() + " is not flown again",
                    "leave this empty, or write " + State.VOID.word() + " as its state");
        }
        if (!row.isEmpty("how") && !closed) {
            row.error(
                    "how",
                    "an attempt that is " + state.word() + " has no official time to explain",
                    "leave this empty");
        }
        if (!row.isEmpty("how") && closed && row.isEmpty("ended")) {
            row.error("ended", "how the time came about is known, but not when", "write when the attempt was closed");
        }
    }

    private static void only(Row row, String column, boolean has, State state, String right) {
        if (has == row.isEmpty(column)) {
            row.error(
                    column,
                    "an attempt that is " + state.word() + (has ? " needs this" : " has none"),
                    has ? right : "leave this empty, or correct the state");
        }
    }

    /** The next attempt is called by the number after those there are, so that no number may be left out. */
    @Override
    public void finish(ImportContext context) {
        context.numbers.forEach((entry, numbers) -> {
            int expected = 1;
            for (var number : numbers.entrySet()) {
                if (number.getKey() != expected && number.getValue().isPresent()) {
                    number.getValue()
                            .get()
                            .error(
                                    "attempt",
                                    "attempt " + expected + " of this entry is missing before attempt "
                                            + number.getKey(),
                                    "number them from 1 without a gap; a scrubbed one has a number too");
                    return;
                }
                expected = number.getKey() + 1;
            }
        });
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (AttemptImported attempt : book.day().attempts()) {
            Table.Cells cells = book.line(table, attempt)
                    .of(attempt.id())
                    .put("model", book.name(attempt.modelId()))
                    .put("motor", book.name(attempt.motorId()))
                    .put("state", attempt.state())
                    .put("called", book.moment(attempt.calledAtMs()))
                    .put("winding", book.moment(attempt.windingAtMs()))
                    .put("holding", book.moment(attempt.holdingAtMs()))
                    .put("released", book.moment(attempt.releasedAtMs()))
                    .put("landed", book.moment(attempt.landedAtMs()))
                    .put("ended", book.moment(attempt.closedAtMs()))
                    .put("stop count", Numbers.text(attempt.stopCountCrankTurns()))
                    .put(
                            "launch torque",
                            Quantity.Kind.TORQUE.text(attempt.launchTorqueNmm(), attempt.launchTorqueTyped()))
                    .put("official", Numbers.time(attempt.officialMs()))
                    .put("how", book.day().hows().get(attempt.id()))
                    .put("reason", attempt.voidReason())
                    .put("flown again", Boolean.TRUE.equals(attempt.flownAgain()) ? "yes" : "");
            AttemptNotes.put(book, attempt.id(), cells);
            AttemptPlaces.put(book, attempt.id(), cells);
            HeldCells.put(book, attempt.id(), cells);
            Optional<AttemptNoted> noted = book.noted(attempt.id());
            TimedBy timed = book.timed(attempt);
            FlightMarks.put(
                    book,
                    timed.marked(book.marks(attempt.id())),
                    usual(noted.map(AttemptNoted::fromPaper).orElse(false)),
                    what -> number(
                            what,
                            attempt.stopCountCrankTurns(),
                            attempt.launchTorqueNmm(),
                            timed.timeMs(),
                            noted.map(n -> new Noted(n.peakTorqueNmm(), n.backOffCrankTurns(), n.remainingCrankTurns()))
                                    .orElse(Noted.NOTHING)),
                    what -> what != Measured.TIME || attempt.officialMs() != null,
                    cells);
            UsesOfRows.put(book, attempt.id(), cells);
        }
    }

    /** What is noted of a wind and its flight beside the attempt itself. */
    private record Noted(
            @Nullable Double peakNmm,
            @Nullable Double backOff,
            @Nullable Double remaining) {
        static final Noted NOTHING = new Noted(null, null, null);
    }

    private static Source usual(boolean fromPaper) {
        return fromPaper ? Source.CARD : Source.TYPED;
    }

    private static @Nullable Double number(
            Measured what, @Nullable Integer stop, @Nullable Double launchNmm, @Nullable Long timeMs, Noted noted) {
        return switch (what) {
            case FLIGHT, AT_FULL -> null;
            case CRANK_TURNS -> stop == null ? null : (Double) stop.doubleValue();
            case LAUNCH_TORQUE -> launchNmm;
            case TIME -> timeMs == null ? null : (Double) timeMs.doubleValue();
            case PEAK_TORQUE -> noted.peakNmm();
            case BACK_OFF -> noted.backOff();
            case REMAINING -> noted.remaining();
        };
    }
}

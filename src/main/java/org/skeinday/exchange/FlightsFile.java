package org.skeinday.exchange;

import java.util.List;
import java.util.stream.Stream;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.contest.EventAdded;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarks;

/** {@code flights.csv}: flights outside any attempt. */
final class FlightsFile implements DayFile {
    private static final List<Column> OF_FLIGHT = FlightMarks.after(List.of(
            Column.text("event", 120),
            Column.text("model", 120),
            Column.text("motor", 40).filled(),
            Column.plain("flown").filled(),
            Column.plain("crank turns"),
            Column.plain("ratio").or("10"),
            Column.torque("stop torque"),
            Column.torque("launch torque"),
            Column.plain("back off"),
            Column.time("time").filled(),
            Column.plain("remaining"),
            Column.text("note", 400),
            Column.yesNo("valid", "yes"),
            Column.text("reason", 400)));

    private static final List<Column> COLUMNS =
            Stream.concat(OF_FLIGHT.stream(), Stream.of(UsesOfRows.column())).toList();

    @Override
    public String name() {
        return "flights.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String event = context.event(row);
        String model = row.named("model", context.models);
        String motor = row.named("motor", context.motors);
        Long flown = context.moments.read(row, "flown");
        Integer turns = Numbers.whole(row, "crank turns", 1, 100_000);
        double ratio = Numbers.decimal(row, "ratio", 0.1, 100, 10);
        Quantity stop = Quantity.Kind.TORQUE.read(row, "stop torque");
        Quantity launch = Quantity.Kind.TORQUE.read(row, "launch torque");
        Double backOff = Numbers.decimal(row, "back off", 0, 10_000);
        Long time = Numbers.time(row, "time", 0, ReadingTaken.LONGEST_MS);
        Double remaining = Numbers.decimal(row, "remaining", 0, 100_000);
        boolean valid = row.yes("valid");
        if (!valid && row.isEmpty("reason")) {
            row.error("reason", "a flight that is not valid needs a reason", "write why, for example touched the wall");
        }
        if (flown == null || time == null || row.isWrong()) {
            return;
        }
        String id = context.newId();
        context.flights.add(
                row,
                "flown",
                ImportContext.key(event, motor, flown, time),
                "of " + row.text("motor") + " at " + row.text("flown"),
                id);
        var flight = new PracticeFlown(
                id,
                event,
                model.isEmpty() ? null : model,
                motor,
                flown,
                turns,
                ratio,
                Quantity.siOrNull(stop),
                Quantity.textOrNull(stop),
                Quantity.siOrNull(launch),
                Quantity.textOrNull(launch),
                backOff,
                time,
                remaining,
                row.optional("note"),
                valid,
                row.optional("reason"));
        context.take(row, "flight.flown", () -> flight);
        context.uses.take(row, id, motor);
        FlightMarks.take(row, context, id, Source.TYPED, flight.flight(ValueMarks.NONE)::number);
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (PracticeFlown flight : book.day().flights()) {
            EventAdded event = book.event(flight.eventId());
            Table.Cells cells = table.line(
                            event.day(), event.name(), Table.order(flight.flownAtMs()), book.name(flight.motorId()))
                    .of(flight.id())
                    .put("event", event.name())
                    .put("model", book.name(flight.modelId()))
                    .put("motor", book.name(flight.motorId()))
                    .put("flown", book.moment(flight.flownAtMs()))
                    .put("crank turns", Numbers.text(flight.crankTurns()))
                    .put("ratio", Numbers.text(flight.winderRatio()))
                    .put("stop torque", Quantity.Kind.TORQUE.text(flight.stopTorqueNmm(), flight.stopTorqueTyped()))
                    .put(
                            "launch torque",
                            Quantity.Kind.TORQUE.text(flight.launchTorqueNmm(), flight.launchTorqueTyped()))
                    .put("back off", Numbers.text(flight.backOffCrankTurns()))
                    .put("time", Numbers.time(flight.durationMs()))
                    .put("remaining", Numbers.text(flight.remainingCrankTurns()))
                    .put("note", flight.note())
                    .put("valid", flight.valid() ? "yes" : "no")
                    .put("reason", flight.invalidReason());
            FlightMarks.put(
                    book,
                    book.marks(flight.id()),
                    Source.TYPED,
                    flight.flight(ValueMarks.NONE)::number,
                    what -> true,
                    cells);
            UsesOfRows.put(book, flight.id(), cells);
        }
    }
}

package org.skeinday.exchange;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.Span;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.WinderOutput;

/** {@code stations.csv}: winding places, each with its mount, winder, meter and scale. */
final class StationsFile implements DayFile {
    private static final String UNKNOWN = "unknown";
    private static final List<String> OUTPUTS =
            Stream.concat(Stream.of(UNKNOWN), WinderOutput.WORDS.stream()).toList();
    private static final List<Column> COLUMNS = List.of(
            Column.text("station", 120).filled(),
            Column.choice("mount", "table", StationAdded.MOUNTS),
            Column.plain("pull test").in(Column.Unit.NEWTONS),
            Column.plain("pull tested"),
            Column.plain("winder ratio"),
            Column.plain("ratio checked"),
            Column.choice("counter", "none", StationAdded.COUNTERS),
            Column.yesNo("counts back", "no"),
            Column.text("meter", 60),
            Column.torque("zero"),
            Column.text("span", 200),
            Column.plain("calibrated"),
            Column.mass("known mass").in(Column.Unit.GRAMS),
            Column.mass("scale reads"),
            Column.torque("division"),
            Column.torque("full scale"),
            Column.choice("output turns", UNKNOWN, OUTPUTS),
            Column.plain("output checked"),
            Column.text("output checked by", 120));

    @Override
    public String name() {
        return "stations.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String id = context.newId();
        String name = row.text("station");
        context.stations.add(row, "station", name, "'" + name + "'", id);
        String mount = row.word("mount");
        Double pull = Numbers.decimal(row, "pull test", 0.1, 1000);
        String pulled = day(row, "pull tested");
        Double ratio = Numbers.decimal(row, "winder ratio", 1, 50);
        String checked = day(row, "ratio checked");
        String counter = row.word("counter");
        boolean back = row.yes("counts back");
        Quantity zero = Quantity.Kind.TORQUE.read(row, "zero");
        row.read("span", Span::parse);
        String calibrated = day(row, "calibrated");
        Quantity known = Quantity.Kind.MASS.read(row, "known mass", 0.01, 500);
        Quantity reads = Quantity.Kind.MASS.read(row, "scale reads", 0.001, 600);
        Quantity division = Quantity.Kind.TORQUE.read(row, "division", 0.0001, 10_000);
        Quantity fullScale = Quantity.Kind.TORQUE.read(row, "full scale", 0.0001, 10_000);
        String turns = row.word("output turns");
        String seen = day(row, "output checked");
        String seenBy = row.named("output checked by", context.people);
        context.take(
                row,
                "station.added",
                () -> new StationAdded(
                        id,
                        name,
                        mount,
                        pull,
                        pulled,
                        ratio,
                        checked,
                        counter,
                        back,
                        row.optional("meter"),
                        Quantity.siOrNull(zero),
                        Quantity.textOrNull(zero),
                        row.optional("span"),
                        calibrated,
                        Quantity.siOrNull(known),
                        Quantity.textOrNull(known),
                        Quantity.siOrNull(reads),
                        Quantity.textOrNull(reads),
                        Quantity.siOrNull(division),
                        Quantity.textOrNull(division),
                        Quantity.siOrNull(fullScale),
                        Quantity.textOrNull(fullScale),
                        turns.equals(UNKNOWN) ? null : turns,
                        seen,
                        seenBy.isEmpty() ? null : seenBy));
    }

    private static @Nullable String day(Row row, String column) {
        LocalDate day = Numbers.day(row, column);
        return day == null ? null : day.toString();
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (StationAdded station : book.day().more().stations()) {
            table.line(station.name())
                    .of(station.id())
                    .put("station", station.name())
                    .put("mount", station.mount())
                    .put("pull test", Numbers.text(station.pullTestN()))
                    .put("pull tested", station.pullTested())
                    .put("winder ratio", Numbers.text(station.winderRatio()))
                    .put("ratio checked", station.ratioChecked())
                    .put("counter", station.counter())
                    .put("counts back", station.countsBack() ? "yes" : "no")
                    .put("meter", station.meter())
                    .put("zero", Quantity.Kind.TORQUE.text(station.zeroNmm(), station.zeroTyped()))
                    .put("span", station.span())
                    .put("calibrated", station.calibrated())
                    .put("known mass", Quantity.Kind.MASS.text(station.knownMassG(), station.knownMassTyped()))
                    .put("scale reads", Quantity.Kind.MASS.text(station.scaleReadsG(), station.scaleReadsTyped()))
                    .put("division", Quantity.Kind.TORQUE.text(station.divisionNmm(), station.divisionTyped()))
                    .put("full scale", Quantity.Kind.TORQUE.text(station.fullScaleNmm(), station.fullScaleTyped()))
                    .put("output turns", station.outputTurns())
                    .put("output checked", station.outputChecked())
                    .put("output checked by", book.person(station.outputCheckedBy()));
        }
    }
}

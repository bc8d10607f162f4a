package org.skeinday.exchange;

import java.time.LocalDate;
import java.util.List;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ScoreKind;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.Take;
import org.skeinday.units.FlightTime;

/** {@code event.csv}: days and their rules. */
final class EventFile implements DayFile {
    private static final List<Column> COLUMNS = List.of(
            Column.text("name", 120).filled(),
            Column.choice("kind", DayKind.VISITING.word(), EventAdded.KINDS),
            Column.plain("day").filled(),
            Column.text("hall", 120),
            Column.length("ceiling"),
            Column.plain("attempts").or("3"),
            Column.plain("window minutes").in(Column.Unit.MINUTES).or("12"),
            Column.choice("score", ScoreKind.BEST.word(), EventAdded.SCORES),
            Column.plain("best of").or("1"),
            Column.plain("timekeepers").or("1"),
            Column.choice("take", Take.MIDDLE.word(), EventAdded.TAKES),
            Column.choice("if two", Take.LONGER.word(), EventAdded.IF_TWO),
            Column.choice("round", Rounding.DOWN.word(), EventAdded.ROUNDINGS),
            Column.time("to").in(Column.Unit.SECONDS).or("0.1"),
            Column.yesNo("round watches first", "no"),
            Column.time("minimum").or("0"),
            Column.plain("winder ratio").or("10"),
            Column.length("lane"));

    @Override
    public String name() {
        return "event.csv";
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String id = context.newId();
        String name = row.text("name");
        context.events.add(row, "name", name, "'" + name + "'", id);
        LocalDate day = Numbers.day(row, "day");
        Quantity ceiling = Quantity.Kind.LENGTH.read(row, "ceiling");
        Quantity lane = Quantity.Kind.LENGTH.read(row, "lane");
        int attempts = Numbers.whole(row, "attempts", 1, 20, 3);
        context.attemptsOf.put(id, attempts);
        int best = Numbers.whole(row, "best of", 1, 20, 1);
        if (best > attempts) {
            row.error(
                    "best of",
                    "the best " + best + " of " + attempts + " attempts cannot count",
                    "write at most " + attempts);
        }
        String kind = row.word("kind");
        int window = Numbers.whole(row, "window minutes", 0, 600, 12);
        String score = row.word("score");
        int timekeepers = Numbers.whole(row, "timekeepers", 1, 3, 1);
        String take = row.word("take");
        String ifTwo = row.word("if two");
        long step = Numbers.time(row, "to", 1, 60_000, 100);
        String rounding = row.word("round");
        boolean watchesFirst = row.yes("round watches first");
        long minimum = Numbers.time(row, "minimum", 0, 3_600_000, 0);
        double ratio = Numbers.decimal(row, "winder ratio", 1, 50, 10);
        if (day == null) {
            return;
        }
        context.ratios.put(id, ratio);
        context.take(
                row,
                "event.added",
                () -> new EventAdded(
                        id,
                        name,
                        kind,
                        context.moments.moved(day).toString(),
                        row.optional("hall"),
                        Quantity.siOrNull(ceiling),
                        Quantity.textOrNull(ceiling),
                        attempts,
                        window,
                        score,
                        best,
                        timekeepers,
                        take,
                        ifTwo,
                        step,
                        rounding,
                        watchesFirst,
                        minimum,
                        ratio,
                        Quantity.siOrNull(lane),
                        Quantity.textOrNull(lane)));
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (EventAdded event : book.day().events()) {
            table.line(event.day(), event.name())
                    .of(event.id())
                    .put("name", event.name())
                    .put("kind", event.kind())
                    .put("day", event.day())
                    .put("hall", event.hall())
                    .put("ceiling", Quantity.Kind.LENGTH.text(event.ceilingMm(), event.ceilingTyped()))
                    .put("attempts", Numbers.text(event.attempts()))
                    .put("window minutes", Numbers.text(event.windowMinutes()))
                    .put("score", event.score())
                    .put("best of", Numbers.text(event.bestOf()))
                    .put("timekeepers", Numbers.text(event.timekeepers()))
                    .put("take", event.take())
                    .put("if two", event.ifTwo())
                    .put("round", event.rounding())
                    .put("to", new FlightTime(event.roundToMs()).seconds(0))
                    .put("round watches first", event.roundWatchesFirst() ? "yes" : "no")
                    .put("minimum", new FlightTime(event.minimumMs()).seconds(0))
                    .put("winder ratio", Numbers.text(event.winderRatio()))
                    .put("lane", Quantity.Kind.LENGTH.text(event.laneMm(), event.laneTyped()));
        }
    }
}

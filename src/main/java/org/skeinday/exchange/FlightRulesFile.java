package org.skeinday.exchange;

import java.util.List;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.timing.FlightWindow;
import org.skeinday.units.EnumWords;
import org.skeinday.units.FlightTime;

/** {@code rules.csv}: which flights of an event are official, contacts, collisions, ties, last call. */
final class FlightRulesFile implements DayFile {
    static final String NAME = "rules.csv";

    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.time("held watched").in(Column.Unit.SECONDS),
            Column.time("held deduct").in(Column.Unit.SECONDS),
            Column.plain("repeats").or("0"),
            Column.plain("repeats in all"),
            Column.choice("short again", EnumWords.of(FlightRules.IfShort.NO_TIME), FlightRules.IF_SHORT),
            Column.choice("collision", EnumWords.of(FlightRules.AfterCollision.STANDS), FlightRules.COLLISION),
            Column.time("time to choose").in(Column.Unit.SECONDS).or("60"),
            Column.choice("without a choice", EnumWords.of(FlightRules.IfSilent.KEEP), FlightRules.IF_SILENT),
            Column.choice("ties", EnumWords.of(FlightRules.Ties.NEXT), FlightRules.TIES),
            Column.plain("drop best").or("0"),
            Column.plain("drop worst").or("0"),
            Column.time("last call").or("2:00"),
            Column.choice("inside the window", EnumWords.of(FlightRules.Inside.RELEASE), FlightRules.INSIDE),
            Column.choice("if caught", "", FlightRules.IF_CAUGHT),
            Column.choice("start again", "", FlightRules.START_AGAIN),
            Column.choice("mean ranks", "", FlightRules.MEAN_RANKS));

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public void take(Row row, ImportContext context) {
        String event = context.event(row);
        Long watched = Numbers.time(row, "held watched", 0, 600_000);
        Long deduct = Numbers.time(row, "held deduct", 0, 600_000);
        if (deduct != null && (watched == null || deduct > watched)) {
            row.error(
                    "held deduct",
                    "'" + row.text("held deduct") + "' is more than was watched",
                    "write at most the time in held watched, or leave this empty");
        }
        int repeats = Numbers.whole(row, "repeats", 0, 10, 0);
        Integer inAll = Numbers.whole(row, "repeats in all", 0, 500);
        String ifShort = row.word("short again");
        String collision = row.word("collision");
        long choose = Numbers.time(row, "time to choose", 1, 3_600_000, FlightRules.COLLISION_MS);
        String ifSilent = row.word("without a choice");
        String ties = row.word("ties");
        int best = Numbers.whole(row, "drop best", 0, 5, 0);
        int worst = Numbers.whole(row, "drop worst", 0, 5, 0);
        if (!event.isEmpty() && best + worst >= context.attemptsOf.getOrDefault(event, Integer.MAX_VALUE)) {
            row.error(
                    best > 0 ? "drop best" : "drop worst",
                    "of " + context.attemptsOf.get(event) + " attempts " + (best + worst) + " would be dropped",
                    "drop fewer than the event has attempts");
        }
        long lastCall = Numbers.time(row, "last call", 0, 3_600_000, FlightWindow.LAST_CALL_MS);
        String inside = row.word("inside the window");
        String caught = row.word("if caught");
        boolean less = EnumWords.of(FlightRules.IfCaught.LESS).equals(caught);
        if (!caught.isEmpty() && !less && watched != null) {
            row.error(
                    "held watched",
                    "with '" + caught + "' nothing is watched",
                    "leave this and held deduct empty, or write less in if caught");
        }
        if (event.isEmpty() || row.isWrong()) {
            return;
        }
        context.flightRules.add(row, "event", event, "'" + row.text("event") + "'", event);
        context.take(
                row,
                "rules.set",
                () -> new FlightRules(
                        event,
                        watched,
                        deduct,
                        repeats,
                        inAll,
                        ifShort,
                        collision,
                        choose,
                        ifSilent,
                        ties,
                        best,
                        worst,
                        lastCall,
                        inside,
                        row.optional("if caught"),
                        row.optional("start again"),
                        row.optional("mean ranks")));
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (FlightRules rules : book.day().more().flightRules()) {
            EventAdded event = book.event(rules.eventId());
            table.line(event.day(), event.name())
                    .of(rules.eventId())
                    .put("event", event.name())
                    .put("held watched", seconds(rules.heldWatchedMs()))
                    .put("held deduct", seconds(rules.heldDeductMs()))
                    .put("repeats", Numbers.text(rules.repeatsPerFlight()))
                    .put("repeats in all", Numbers.text(rules.repeatsInAll()))
                    .put("short again", rules.ifShort())
                    .put("collision", rules.collision())
                    .put("time to choose", seconds(rules.collisionMs()))
                    .put("without a choice", rules.ifSilent())
                    .put("ties", rules.ties())
                    .put("drop best", Numbers.text(rules.dropBest()))
                    .put("drop worst", Numbers.text(rules.dropWorst()))
                    .put("last call", seconds(rules.lastCallMs()))
                    .put("inside the window", rules.inside())
                    .put("if caught", rules.ifCaught())
                    .put("start again", rules.startAgain())
                    .put("mean ranks", rules.meanRanks());
        }
    }

    private static String seconds(@org.jspecify.annotations.Nullable Long ms) {
        return ms == null ? "" : new FlightTime(ms).seconds(0);
    }
}

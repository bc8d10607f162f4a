package org.skeinday.exchange;

import java.util.List;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.Terms;
import org.skeinday.timing.WatchesRule;
import org.skeinday.units.EnumWords;
import org.skeinday.units.FlightTime;

/** {@code terms.csv}: what an event asks beside its rules: devices, help, inspection, flight log, protest. */
final class TermsFile implements DayFile {
    static final String NAME = "terms.csv";

    private static final List<Column> COLUMNS = List.of(
            Column.text("event", 120),
            Column.choice("devices", EnumWords.of(Terms.Devices.FREE), Terms.DEVICES),
            Column.choice("outside help", EnumWords.of(Terms.OutsideHelp.FREE), Terms.OUTSIDE_HELP),
            Column.mass("motor limit").in(Column.Unit.GRAMS),
            Column.mass("model least").in(Column.Unit.GRAMS),
            Column.plain("declared motors"),
            Column.yesNo("reinspection", "no"),
            Column.plain("log flights").or("0"),
            Column.text("log columns", 120),
            Column.text("log signed by", 120),
            Column.text("sections", 400),
            Column.plain("protest minutes").in(Column.Unit.MINUTES),
            Column.time("spread limit"),
            Column.choice("one watch left", EnumWords.of(WatchesRule.IfOne.PERSON), Terms.IF_ONE),
            Column.plain("hand in by"));

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
        String devices = row.word("devices");
        String help = row.word("outside help");
        Quantity limit = Quantity.Kind.MASS.read(row, "motor limit", 0.01, 500);
        Quantity least = Quantity.Kind.MASS.read(row, "model least", 0.01, 10_000);
        Integer declared = Numbers.whole(row, "declared motors", 1, 100);
        boolean again = row.yes("reinspection");
        int flights = Numbers.whole(row, "log flights", 0, 200, 0);
        List<String> columns = row.words("log columns", "column of a flight log", Terms.LOG_COLUMNS);
        if (flights > 0 && columns.isEmpty() && !row.isWrong()) {
            row.error(
                    "log columns",
                    "a log of " + flights + " flights is asked for and it is empty",
                    "write one or more of " + String.join(" | ", Terms.LOG_COLUMNS));
        }
        Integer protest = Numbers.whole(row, "protest minutes", 1, 1440);
        Long spread = Numbers.time(row, "spread limit", 0, 60_000);
        String ifOne = row.word("one watch left");
        Long handIn = context.moments.read(row, "hand in by");
        if (event.isEmpty() || row.isWrong()) {
            return;
        }
        context.terms.add(row, "event", event, "'" + row.text("event") + "'", event);
        var terms = new Terms(
                event,
                devices,
                help,
                Quantity.siOrNull(limit),
                Quantity.textOrNull(limit),
                Quantity.siOrNull(least),
                Quantity.textOrNull(least),
                declared,
                again,
                flights,
                String.join(",", columns),
                row.optional("log signed by"),
                row.optional("sections"),
                protest,
                spread,
                ifOne,
                handIn);
        check(row, context, terms);
        context.take(row, "terms.set", () -> terms);
    }

    /** Motors that are declared already must stay within a new limit. */
    private static void check(Row row, ImportContext context, Terms terms) {
        context.declared.holds(terms);
        context.declared.of(terms.eventId()).forEach((entry, motors) -> {
            for (String motor : motors) {
                context.declared
                        .over(entry, motor)
                        .ifPresent(over -> row.error(
                                "motor limit",
                                "the declared motor " + context.motors.nameOf(motor) + over,
                                "take it out of its entry first, or write a higher limit"));
            }
            if (terms.declaredMotors() != null && motors.size() > terms.declaredMotors()) {
                row.error(
                        "declared motors",
                        "an entry has declared " + motors.size() + " motors already",
                        "take some out of it first, or allow more");
            }
        });
    }

    @Override
    public void put(ExportContext book, Table table) {
        for (Terms terms : book.day().more().terms()) {
            EventAdded event = book.event(terms.eventId());
            table.line(event.day(), event.name())
                    .of(terms.eventId())
                    .put("event", event.name())
                    .put("devices", terms.devices())
                    .put("outside help", terms.outsideHelp())
                    .put("motor limit", Quantity.Kind.MASS.text(terms.motorLimitG(), terms.motorLimitTyped()))
                    .put("model least", Quantity.Kind.MASS.text(terms.modelLeastG(), terms.modelLeastTyped()))
                    .put("declared motors", Numbers.text(terms.declaredMotors()))
                    .put("reinspection", terms.reinspection() ? "yes" : "no")
                    .put("log flights", Numbers.text(terms.logFlights()))
                    .put("log columns", terms.logColumns().replace(",", " | "))
                    .put("log signed by", terms.logSignedBy())
                    .put("sections", terms.sections())
                    .put("protest minutes", Numbers.text(terms.protestMinutes()))
                    .put("spread limit", terms.spreadMs() == null ? "" : new FlightTime(terms.spreadMs()).seconds(0))
                    .put("one watch left", EnumWords.of(terms.ifOneRule()))
                    .put("hand in by", book.moment(terms.handInAtMs()));
        }
    }
}

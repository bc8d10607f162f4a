package org.skeinday.exchange.action;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.ColumnMapping;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.PlainSheet;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Takes a history from a plain spreadsheet whose columns were given their meanings: all of it or nothing. */
public final class TakeHistory {
    /**
     * The spreadsheet and what its columns mean.
     *
     * @param text as CSV
     * @param zone of the times in it
     */
    public record History(
            String file,
            String text,
            Map<Integer, ColumnMapping.Meaning> meanings,
            Map<String, String> same,
            String zone) {
        /** @throws IllegalArgumentException for a column that has both a place and one value */
        public ColumnMapping mapping() {
            return new ColumnMapping(file, meanings, same);
        }
    }

    private TakeHistory() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(new ActKind<>(
                "exchange.history",
                History.class,
                (tx, context, history) -> decide(tx, context, history, people.get())));
    }

    /** What would be taken, or every cell that is wrong; takes nothing. */
    public static ColumnMapping.Taken check(
            Tx tx, History history, Map<String, String> people, Supplier<String> newId) {
        return history.mapping()
                .take(
                        PlainSheet.of("the spreadsheet", history.text()).rows(),
                        ExchangeDayReader.all(tx, people),
                        newId,
                        ZoneId.of(history.zone()));
    }

    /** The first cells that are wrong, in words, and how many more there are. */
    private static List<String> told(ColumnMapping.Taken taken) {
        return CellError.told(
                taken.errors(),
                e -> "Row " + e.row() + ": " + e.error().wrong() + "; "
                        + e.error().right());
    }

    private static ValueMarked fromFile(ActContext context, PracticeFlown flight) {
        return new ValueMarked(
                flight.id(),
                Measured.FLIGHT.word(),
                null,
                Source.FILE.word(),
                false,
                null,
                context.now().toEpochMilli());
    }

    static Decision decide(Tx tx, ActContext context, History history, Map<String, String> people) {
        ColumnMapping.Taken taken;
        try {
            taken = check(tx, history, people, context::nextId);
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
        if (!taken.errors().isEmpty()) {
            Map<String, String> wrong = new LinkedHashMap<>();
            taken.errors().stream()
                    .limit(ImportFiles.MOST_NAMED)
                    .forEach(e -> wrong.merge(
                            e.row() + ":" + e.error().column(), e.error().text(), (a, b) -> a + "\n" + b));
            return new Decision.Refused(String.join("\n", told(taken)), wrong);
        }
        List<Fact> facts = new ArrayList<>();
        for (DayFiles.Named named : taken.facts()) {
            facts.add(Fact.of(named.kind(), named.body()));
            if (named.body() instanceof PracticeFlown flight) {
                facts.add(Fact.of("flight.marked", fromFile(context, flight)));
            }
        }
        return new Decision.Decided(facts, taken.names(), Set.of("attempts", "contest", "motors"));
    }
}

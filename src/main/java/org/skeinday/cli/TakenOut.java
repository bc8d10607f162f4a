package org.skeinday.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.DayPart;
import org.skeinday.exchange.RecordTables;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.platform.db.TableContents;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.Season;
import picocli.CommandLine.Option;

/** What is taken out of a record: all of it, one event, one season, or its tables. */
final class TakenOut {
    /** As the command line says it; nothing of it is all of the record. */
    static final class Choice {
        @Option(names = "--event", description = "one event only, by its name", paramLabel = "NAME")
        @Nullable
        String event;

        @Option(
                names = "--season",
                description = "one season only, by any day of it; a season begins on 1 September",
                paramLabel = "DAY")
        @Nullable
        LocalDate season;

        @Option(names = "--tables", description = "every table of the record, for tools of your own; import takes none")
        boolean tables;

        String about() {
            return event != null ? event : season != null ? DayPart.words(Season.of(season)) : DayPart.ALL;
        }
    }

    private TakenOut() {}

    /** @throws IllegalArgumentException when there is no such event */
    static DayFiles.Written of(Tx tx, Choice choice, Map<String, String> people, ZoneId zone) {
        if (choice.tables) {
            Map<String, List<List<String>>> tables = TableContents.texts(tx);
            Map<String, Integer> rows = new java.util.TreeMap<>();
            tables.forEach((name, table) -> rows.put(RecordTables.file(name), table.size() - 1));
            return new DayFiles.Written(RecordTables.write(tables, people), rows);
        }
        return DayFiles.write(part(ExchangeDayReader.all(tx, people), MotorUseStore.all(tx), choice, zone), zone);
    }

    private static Day part(Day day, MotorUses uses, Choice choice, ZoneId zone) {
        if (choice.event != null) {
            return DayPart.ofEvent(day, uses, event(day.events(), choice.event), zone);
        }
        if (choice.season != null) {
            return DayPart.ofSeason(day, uses, Season.of(choice.season), zone);
        }
        return DayPart.whole(day, uses, zone);
    }

    private static String event(List<EventAdded> events, String name) {
        return events.stream()
                .filter(e -> e.name().equalsIgnoreCase(name.strip()))
                .map(EventAdded::id)
                .reduce((first, last) -> last)
                .orElseThrow(() -> new IllegalArgumentException("There is no event '" + name + "'; there are "
                        + String.join(
                                ", ", events.stream().map(EventAdded::name).toList())));
    }
}

package org.skeinday.exchange.action;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.skeinday.attempt.store.EventsUnderWay;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.DayFiles;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Takes a folder of files in: all of it or nothing. */
public final class ImportFiles {
    /**
     * The files.
     *
     * @param files text by file name
     * @param zone of the times in them
     * @param shiftMinutes added to every day and time
     */
    public record Files(Map<String, String> files, String zone, long shiftMinutes) {}

    /** Errors that are kept by their place; told are fewer. */
    static final int MOST_NAMED = 200;

    private ImportFiles() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(new ActKind<>(
                "exchange.import", Files.class, (tx, context, files) -> decide(tx, context, files, people.get())));
    }

    /** Reads the files against the record and takes nothing: what an import would bring, or what is wrong. */
    public static DayFiles.Read check(Tx tx, Files files, Map<String, String> people, Supplier<String> newId) {
        return DayFiles.read(
                files.files(),
                ExchangeDayReader.all(tx, people),
                newId,
                ZoneId.of(files.zone()),
                Duration.ofMinutes(files.shiftMinutes()));
    }

    static Decision decide(Tx tx, ActContext context, Files files, Map<String, String> people) {
        DayFiles.Read read = check(tx, files, people, context::nextId);
        if (!read.errors().isEmpty()) {
            Map<String, String> wrong = new LinkedHashMap<>();
            read.errors().stream()
                    .limit(MOST_NAMED)
                    .forEach(error -> wrong.merge(
                            error.file() + ":" + error.line() + ":" + error.column(),
                            error.text(),
                            (a, b) -> a + "\n" + b));
            return new Decision.Refused(String.join("\n", CellError.told(read.errors())), wrong);
        }
        List<Fact> facts = new ArrayList<>(read.facts().stream()
                .map(named -> Fact.of(named.kind(), named.body()))
                .toList());
        EventsUnderWay.stays(tx, facts).ifPresent(facts::add);
        return new Decision.Decided(facts, read.names(), Set.of("attempts", "contest", "motors", "checks"));
    }
}

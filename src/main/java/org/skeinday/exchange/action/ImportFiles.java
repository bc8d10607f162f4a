package org.skeinday.exchange.action;

import java.time.Duration;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.DayFiles;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
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

    private ImportFiles() {}

    public static List<ActKind<?>> kinds() {
        return List.of(new ActKind<>("exchange.import", Files.class, ImportFiles::decide));
    }

    static Decision decide(Tx tx, ActContext context, Files files) {
        DayFiles.Read read = DayFiles.read(
                files.files(), context::newId, ZoneId.of(files.zone()), Duration.ofMinutes(files.shiftMinutes()));
        Map<String, String> wrong = new LinkedHashMap<>();
        for (CellError error : read.errors()) {
            wrong.put(error.file() + ":" + error.line() + ":" + error.column(), error.text());
        }
        if (!wrong.isEmpty()) {
            return new Decision.Refused(String.join("\n", wrong.values()), wrong);
        }
        String known = alreadyThere(tx, read);
        if (!known.isEmpty()) {
            return Decision.refused("Already in the record, so nothing was taken: " + known
                    + ". Import into another folder, or leave these lines out.");
        }
        List<Fact> facts = read.facts().stream()
                .map(named -> Fact.of(named.kind(), named.body()))
                .toList();
        return new Decision.Decided(facts, read.names(), Set.of("attempts", "contest", "motors"));
    }

    private static String alreadyThere(Tx tx, DayFiles.Read read) {
        Set<String> known = new java.util.TreeSet<>();
        EventStore.all(tx).forEach(e -> known.add("the event " + e.name()));
        ModelStore.all(tx).forEach(m -> known.add("the model " + m.name()));
        BatchStore.all(tx).forEach(b -> known.add("the batch " + b.name()));
        MotorStore.all(tx).forEach(m -> known.add("the motor " + m.tag()));
        known.retainAll(read.facts().stream().map(ImportFiles::called).toList());
        return String.join(", ", known);
    }

    private static String called(DayFiles.Named named) {
        if (named.body() instanceof org.skeinday.contest.EventAdded event) {
            return "the event " + event.name();
        }
        if (named.body() instanceof org.skeinday.contest.ModelAdded model) {
            return "the model " + model.name();
        }
        if (named.body() instanceof org.skeinday.motor.BatchAdded batch) {
            return "the batch " + batch.name();
        }
        return named.body() instanceof org.skeinday.motor.MotorAdded motor ? "the motor " + motor.tag() : "";
    }
}

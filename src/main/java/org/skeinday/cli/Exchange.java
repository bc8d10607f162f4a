package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.skeinday.Catalogue;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.action.ImportFiles;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.NewIds;
import org.skeinday.platform.record.RandomHex;
import org.skeinday.platform.record.Writer;
import org.skeinday.platform.record.WriterSettings;

/** Files into a data folder and out of it, while no server runs on it. */
final class Exchange {
    private Exchange() {}

    /**
     * What became of an import.
     *
     * @param n the record's number, 0 when nothing was taken
     * @param rows by file
     * @param errors why nothing was taken; empty when all was
     */
    record Taken(long n, Map<String, Integer> rows, List<CellError> errors) {
        /** The same, with errors said of one file that holds the others. */
        Taken inside(String name) {
            return new Taken(n, rows, errors.stream().map(e -> e.inside(name)).toList());
        }
    }

    /** Takes files in as one act: all of them, or none and every error. */
    static Taken take(Path folder, Map<String, String> texts, long shiftMinutes, Clock clock, SecureRandom random)
            throws IOException {
        return take(folder, texts, shiftMinutes, clock, random, words -> {});
    }

    /** @param progress hears each second how far it has come */
    static Taken take(
            Path folder,
            Map<String, String> texts,
            long shiftMinutes,
            Clock clock,
            SecureRandom random,
            Consumer<String> progress)
            throws IOException {
        var files = new ImportFiles.Files(texts, clock.getZone().getId(), shiftMinutes);
        String id = RandomHex.of(random);
        try (ActStore record = ActStore.open(folder, Catalogue.projection(), clock);
                Writer writer =
                        new Writer(record, Catalogue.actKinds(record), clock, WriterSettings.normal(), (t, n) -> {})) {
            DayFiles.Read read = record.read(
                    tx -> ImportFiles.check(tx, files, record.people().names(), new NewIds(id)::next));
            if (!read.errors().isEmpty()) {
                return new Taken(0, read.rows(), read.errors());
            }
            var act = new Act(
                    id, "exchange.import", "laptop", "", clock.instant(), Json.MAPPER.<ObjectNode>valueToTree(files));
            return new Taken(saved(writer.await(act, progress)), read.rows(), List.of());
        }
    }

    private static long saved(Answer answer) throws IOException {
        if (answer instanceof Answer.Saved saved) {
            return saved.n();
        }
        if (answer instanceof Answer.Refused refused) {
            throw new IllegalArgumentException("Nothing was taken. " + refused.reason());
        }
        if (answer instanceof Answer.DiskFull full) {
            throw new IOException("Nothing was taken. " + full.reason());
        }
        throw new IOException(
                "Stopped before there was an answer. Run the same import again: it says of every row whether it is in.");
    }

    /** The record, or a part of it, as files. */
    static DayFiles.Written write(Path folder, TakenOut.Choice choice, Clock clock) throws IOException {
        try (ActStore record = ActStore.open(folder, Catalogue.projection(), clock)) {
            return record.read(tx -> TakenOut.of(tx, choice, record.people().names(), clock.getZone()));
        }
    }
}

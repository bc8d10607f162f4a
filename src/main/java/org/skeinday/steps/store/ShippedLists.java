package org.skeinday.steps.store;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRow;
import org.skeinday.steps.Checklists;

/**
 * The lists that come with the program. They are no facts until somebody walks through one: then its rows go into the
 * record with the walk, so that replaying never reads this file.
 */
final class ShippedLists {
    static final List<Checklist> ALL = Checklists.of(rows("/checklists.csv"));

    /** As earlier programs brought them, which this one words anew. */
    static final List<Checklist> BEFORE = Checklists.of(rows("/checklists-before.csv"));

    private ShippedLists() {}

    private static List<ChecklistRow> rows(String file) {
        try (InputStream in = Objects.requireNonNull(ShippedLists.class.getResourceAsStream(file), file);
                CsvReader<NamedCsvRecord> csv =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return csv.stream().map(ShippedLists::row).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ChecklistRow row(NamedCsvRecord line) {
        return new ChecklistRow(
                line.getField("list"),
                Integer.parseInt(line.getField("revision")),
                line.getField("title"),
                line.getField("moment"),
                line.getField("way"),
                line.getField("aloud").equals("yes"),
                line.getField("next"),
                line.getField("item"),
                line.getField("text"),
                line.getField("reason"),
                line.getField("critical").equals("yes"),
                line.getField("answer"));
    }
}

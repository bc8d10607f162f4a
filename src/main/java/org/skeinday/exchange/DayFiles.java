package org.skeinday.exchange;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;

/** A coach's files as facts, all of them or every error with its place; and a day as the same files. */
public final class DayFiles {
    /** A fact and its kind. */
    public record Named(String kind, Object body) {}

    /**
     * What was read.
     *
     * @param names person id to display name
     * @param rows how many rows each file has
     * @param errors all of them, by file and line; with one of them nothing may be taken
     */
    public record Read(
            List<Named> facts, Map<String, String> names, Map<String, Integer> rows, List<CellError> errors) {}

    /**
     * What is to be written.
     *
     * @param texts by file name
     * @param rows how many rows each file has
     */
    public record Written(Map<String, String> texts, Map<String, Integer> rows) {}

    private DayFiles() {}

    /** The files in the order in which they are read: none names what a later one brings. */
    private static List<DayFile> files() {
        return List.of(
                new EventFile(),
                new TermsFile(),
                new FlightRulesFile(),
                new ModelsFile(),
                new BatchesFile(),
                new MotorsFile(),
                new CrewFile(),
                new EntriesFile(),
                new WindowsFile(),
                new StationsFile(),
                new NotesFile(),
                new ChecklistsFile(),
                new FlightsFile(),
                new AttemptsFile(),
                new WatchesFile(),
                new ReadingsFile(),
                new ResultsFile());
    }

    static DayFile file(String name) {
        return files().stream()
                .filter(file -> file.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("There is no file '" + name + "'"));
    }

    /** The names of all files, those that are written and not read among them. */
    public static Set<String> known() {
        Set<String> names = new LinkedHashSet<>();
        files().forEach(file -> names.add(file.name()));
        return names;
    }

    /** Whether this file can be worked out from the others: it is written and not read. */
    public static boolean isDerived(String file) {
        return file.equals(ResultsFile.NAME);
    }

    /**
     * Reads files.
     *
     * @param texts by file name
     * @param there what the record has already: files may build on it, and may not bring it again
     * @param newId makes an id, another one each time
     * @param zone of the days and times in the files
     * @param shift moves all of them by the clock on the wall
     */
    public static Read read(Map<String, String> texts, Day there, Supplier<String> newId, ZoneId zone, Duration shift) {
        List<CellError> errors = new ArrayList<>(unknown(texts.keySet()));
        Map<String, Integer> rows = new LinkedHashMap<>();
        var context = new ImportContext(there, new Moments(zone, shift), newId);
        for (DayFile file : files()) {
            String text = texts.get(file.name());
            if (text != null && !isDerived(file.name())) {
                SheetRows sheet = SheetRows.read(file.name(), text, file.columns(), errors);
                sheet.rows().forEach(line -> file.take(new Row(sheet, line, errors), context));
                file.finish(context);
                rows.put(file.name(), sheet.rows().size());
            }
        }
        List<Named> facts = context.facts();
        if (errors.isEmpty() && facts.isEmpty()) {
            errors.add(new CellError(
                    "the folder", 0, "", "there is nothing to take in", "give it rows in one or more of " + names()));
        }
        errors.sort(java.util.Comparator.comparing((CellError e) -> order(e.file()))
                .thenComparing(CellError::file)
                .thenComparing(CellError::line));
        return new Read(facts, context.newPeople(), rows, List.copyOf(errors));
    }

    private static int order(String file) {
        return List.copyOf(known()).indexOf(file);
    }

    private static List<CellError> unknown(Set<String> names) {
        return new TreeSet<>(names)
                .stream()
                        .filter(name -> !known().contains(name))
                        .map(name -> new CellError(
                                name,
                                0,
                                "",
                                "this file is not known",
                                "did you mean '" + Nearest.to(name, known()).orElseThrow() + "'? Known are " + names()))
                        .toList();
    }

    private static String names() {
        return String.join(", ", known());
    }

    /** Writes a day; equal days give equal texts, to the letter. */
    public static Written write(Day day, ZoneId zone) {
        var book = new ExportContext(day, new Moments(zone, Duration.ZERO));
        Map<String, String> texts = new LinkedHashMap<>();
        Map<String, Integer> rows = new LinkedHashMap<>();
        for (DayFile file : files()) {
            var table = new Table(file.columns());
            file.put(book, table);
            texts.put(file.name(), CsvLines.write(table.rows()));
            rows.put(file.name(), table.size());
        }
        return new Written(texts, rows);
    }
}

package org.skeinday.exchange;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** One line of a file. What cannot be read is noted once, with its place; the row then counts as wrong. */
final class Row {
    private final SheetRows sheet;
    private final CsvLines.Line line;
    private final List<CellError> errors;
    private final Set<String> wrongCells = new HashSet<>();
    private boolean wrong;

    Row(SheetRows sheet, CsvLines.Line line, List<CellError> errors) {
        this.sheet = sheet;
        this.line = line;
        this.errors = errors;
        wrongCells.addAll(sheet.header().unusable());
        wrong = !wrongCells.isEmpty();
        checkPlaces();
        sheet.columns().forEach(this::check);
    }

    int line() {
        return line.number();
    }

    boolean isWrong() {
        return wrong;
    }

    /** Notes an error; only the first of a cell is kept, as the others mostly follow from it. */
    void error(String column, String wrongHere, String right) {
        note(column, new CellError(sheet.file(), line.number(), column, wrongHere, right));
    }

    /** Notes an error that is put right otherwise in a form, which has no lines and no other files. */
    void error(String column, String wrongHere, String right, String rightInForm) {
        note(column, new CellError(sheet.file(), line.number(), column, wrongHere, right).orInForm(rightInForm));
    }

    /** Notes what a value said when it refused a cell. */
    void said(String column, IllegalArgumentException refusal) {
        note(column, CellError.said(sheet.file(), line.number(), column, refusal));
    }

    private void note(String column, CellError error) {
        wrong = true;
        if (column.isEmpty() || wrongCells.add(column)) {
            errors.add(error);
        }
    }

    /** A cell without a header is most often a decimal comma that cut a number in two. */
    private void checkPlaces() {
        for (int i = 0; i < line.cells().size(); i++) {
            if (!line.cells().get(i).isBlank() && !sheet.header().headed().contains(i)) {
                error(
                        "",
                        "cell " + (i + 1) + " ('" + line.cells().get(i).strip() + "') stands under no header",
                        "give it one, or write a number with a decimal comma in quotes when commas part the cells");
                return;
            }
        }
    }

    private void check(Column column) {
        String text = cell(column.name());
        if (text.isEmpty() && column.must()) {
            note(column.name(), CellError.empty(sheet.file(), line.number(), column.name()));
        } else if (text.indexOf('\uFFFD') >= 0) {
            error(
                    column.name(),
                    "'" + text + "' has a character that could not be read",
                    "save the file as UTF-8 and look at this cell again");
        } else if (CellText.isStrange(text)) {
            error(column.name(), "the text holds a sign that cannot be seen or printed", "write it without");
        } else if (text.length() > column.longest()) {
            error(column.name(), "the text has " + text.length() + " characters", "write at most " + column.longest());
        }
    }

    private String cell(String column) {
        Header.Cell place = sheet.header().cells().get(column);
        return place == null || place.index() >= line.cells().size()
                ? ""
                : CellText.unguarded(line.cells().get(place.index()));
    }

    /** Whether its file has this column. */
    boolean has(String column) {
        return sheet.header().cells().containsKey(column);
    }

    /** The cell's text; empty for an empty cell and for one that is wrong. */
    String text(String column) {
        sheet.column(column); // a slip in the program, not in the file
        return wrongCells.contains(column) ? "" : cell(column);
    }

    /** Whether nothing was written here; false for a cell that is wrong. */
    boolean isEmpty(String column) {
        return !wrongCells.contains(column) && text(column).isEmpty();
    }

    @Nullable
    String optional(String column) {
        String text = text(column);
        return text.isEmpty() ? null : text;
    }

    String unit(String column) {
        Header.Cell place = sheet.header().cells().get(column);
        return place == null ? "" : place.unit();
    }

    /** A word of the column's list, lower case; for an empty cell what the column says it means. */
    String word(String column) {
        List<String> words = sheet.column(column).words();
        String otherwise = sheet.column(column).otherwise();
        String text = text(column).toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            return otherwise;
        }
        if (!words.contains(text)) {
            error(column, "'" + text(column) + "' is not known here", "write one of " + String.join(", ", words));
            return otherwise;
        }
        return text;
    }

    boolean yes(String column) {
        return word(column).equals("yes");
    }

    /** The words of a cell that holds several, each known and once, in the order of the list. */
    List<String> words(String column, String what, List<String> known) {
        List<String> typed = Arrays.stream(text(column).toLowerCase(Locale.ROOT).split("[|;,/\\s]+"))
                .filter(word -> !word.isEmpty())
                .toList();
        for (String word : typed) {
            if (!known.contains(word)) {
                error(
                        column,
                        "'" + word + "' is no " + what + " that is known",
                        "write one or more of " + String.join(" | ", known));
            }
        }
        return known.stream().filter(typed::contains).toList();
    }

    /** The ids behind several names parted by {@link ModelsFile#BETWEEN}; each that is not there is noted. */
    List<String> allNamed(String column, Names names) {
        List<String> typed = Arrays.stream(text(column).split("[|]", -1))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .distinct()
                .toList();
        for (String name : typed) {
            if (names.id(name).isEmpty()) {
                error(
                        column,
                        "there is no " + names.what() + " '" + name + "'",
                        names.suggestion(name) + "; part several by " + ModelsFile.BETWEEN);
            }
        }
        return typed.stream().flatMap(name -> names.id(name).stream()).toList();
    }

    /** Reads a filled cell; null for an empty one and, with a noted error, for one that cannot be read. */
    <T> @Nullable T read(String column, Function<String, T> reading) {
        String text = text(column);
        if (text.isEmpty()) {
            return null;
        }
        try {
            return reading.apply(text);
        } catch (IllegalArgumentException e) {
            said(column, e);
            return null;
        }
    }

    /** The id behind a name that another file or the record gives; empty and noted when there is none. */
    String named(String column, Names names) {
        String name = text(column);
        Optional<String> id = names.id(name);
        if (id.isEmpty() && !name.isEmpty()) {
            error(column, "there is no " + names.what() + " '" + name + "'", names.suggestion(name));
        }
        return id.orElse("");
    }
}

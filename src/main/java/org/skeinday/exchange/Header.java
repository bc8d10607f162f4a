package org.skeinday.exchange;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.units.Misread;

/**
 * A file's first line. A header may carry a unit: {@code loop (in)}, {@code mass [g]}, {@code mass g}.
 *
 * @param cells by column's name
 * @param unusable columns whose header is wrong: said once, not on every row
 * @param headed places that have a header at all: nothing may stand under none
 */
record Header(Map<String, Cell> cells, Set<String> unusable, Set<Integer> headed) {
    private static final Pattern BRACKETS = Pattern.compile("([^(\\[]*)[(\\[]([^)\\]]*)[)\\]]\\s*");

    static Header none() {
        return new Header(Map.of(), Set.of(), Set.of());
    }

    /** @param unit empty when the header names none */
    record Cell(int index, String unit) {}

    private record Named(Column column, String unit) {}

    static Header read(String file, CsvLines.Line line, List<Column> known, List<CellError> errors) {
        var header = new Header(new HashMap<>(), new HashSet<>(), new HashSet<>());
        for (int i = 0; i < line.cells().size(); i++) {
            String typed = CellText.unguarded(line.cells().get(i));
            if (!typed.isEmpty()) {
                header.headed.add(i);
                header.take(file, line.number(), typed, i, known, errors);
            }
        }
        known.stream()
                .filter(column -> column.must() && !header.cells.containsKey(column.name()))
                .filter(column -> !header.unusable.contains(column.name()))
                .forEach(column -> header.miss(file, line.number(), column, known, errors));
        return header;
    }

    private void miss(String file, int line, Column column, List<Column> known, List<CellError> errors) {
        unusable.add(column.name());
        errors.add(new CellError(
                file,
                line,
                column.name(),
                "this column is missing and every row needs it",
                "add it; the columns are " + names(known)));
    }

    private void take(String file, int line, String typed, int index, List<Column> known, List<CellError> errors) {
        Optional<Named> named = named(typed, known);
        if (named.isEmpty()) {
            String nearest = nearest(typed, known);
            errors.add(new CellError(
                    file,
                    line,
                    typed,
                    "this column is not known here",
                    "did you mean '" + nearest + "'? Known are " + names(known)));
            unusable.add(nearest); // most likely it stands here, misspelt: not missing as well
            return;
        }
        String name = named.get().column().name();
        Cell first = cells.putIfAbsent(name, new Cell(index, named.get().unit()));
        if (first != null) {
            errors.add(new CellError(
                    file,
                    line,
                    name,
                    "this column is there twice, as cell " + (first.index() + 1) + " and as cell " + (index + 1),
                    "keep one"));
            return;
        }
        String unit = named.get().unit();
        Optional<Misread> refused =
                unit.isEmpty() ? Optional.empty() : named.get().column().refuses(unit);
        refused.ifPresent(misread -> {
            unusable.add(name);
            errors.add(CellError.said(file, line, name, misread));
        });
    }

    private static Optional<Named> named(String typed, List<Column> known) {
        Optional<Column> whole = column(typed, known);
        if (whole.isPresent()) {
            return whole.map(column -> new Named(column, ""));
        }
        Matcher brackets = BRACKETS.matcher(typed);
        if (brackets.matches()) {
            return column(brackets.group(1), known)
                    .map(column -> new Named(column, brackets.group(2).strip()));
        }
        return byLastWords(typed, known);
    }

    /** {@code mass g}, {@code mass_g}: a known column, then a unit that it takes. */
    private static Optional<Named> byLastWords(String typed, List<Column> known) {
        for (int at = typed.length() - 1; at > 0; at--) {
            if (typed.charAt(at) == ' ' || typed.charAt(at) == '_') {
                String unit = typed.substring(at + 1).strip();
                Optional<Column> column = column(typed.substring(0, at), known)
                        .filter(c -> c.kind() != Column.Kind.PLAIN)
                        .filter(c -> c.refuses(unit).isEmpty());
                if (column.isPresent()) {
                    return column.map(c -> new Named(c, unit));
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Column> column(String typed, List<Column> known) {
        String plain = typed.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
        return known.stream().filter(c -> c.name().equals(plain)).findFirst();
    }

    private static String nearest(String typed, List<Column> known) {
        List<String> names = known.stream().map(Column::name).toList();
        return Nearest.to(typed.replaceAll("[(\\[].*", "").strip(), names).orElseThrow();
    }

    private static String names(List<Column> known) {
        return String.join(", ", known.stream().map(Column::name).toList());
    }
}

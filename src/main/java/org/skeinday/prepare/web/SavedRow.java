package org.skeinday.prepare.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.prepare.Sheet;

/** The row that a form has just saved: which it is, and what people call it. */
final class SavedRow {
    private SavedRow() {}

    /**
     * The one with that id, the one that this act made, or the one with the name that was typed; empty when somebody has
     * taken it out meanwhile.
     *
     * @param id empty for a new one
     * @param act that saved it: what it made is called after it
     */
    static Optional<DayRows.RowText> of(
            PrepareContext desk, Sheet thing, String id, String act, Map<String, String> typed) {
        Day day = desk.day();
        String name = thing.shown().get(0);
        Optional<DayRows.RowText> changed = RowForm.row(desk, thing, day, id);
        if (changed.isPresent()) {
            return changed;
        }
        List<DayRows.RowText> rows = DayRows.of(day, desk.zone(), thing.file());
        return first(rows, row -> row.id().startsWith(act + "-"))
                .or(() -> first(rows, row -> row.cells().getOrDefault(name, "").equals(typed.get(name))));
    }

    private static Optional<DayRows.RowText> first(List<DayRows.RowText> rows, Predicate<DayRows.RowText> is) {
        return rows.stream().filter(is).findFirst();
    }

    /** As it is said after saving, for example "Saved: M1." */
    static String words(Sheet thing, Map<String, String> cells) {
        String name = cells.getOrDefault(thing.shown().get(0), "");
        if (thing == Sheet.WINDOWS) {
            name = (name.isEmpty() ? "all entries" : name) + ", " + cells.getOrDefault("opens", "");
        }
        return name.isEmpty() ? "Saved." : "Saved: " + name + ".";
    }
}

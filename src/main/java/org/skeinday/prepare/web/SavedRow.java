package org.skeinday.prepare.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.skeinday.exchange.DayRows;
import org.skeinday.prepare.Thing;

/** The row that a form has just saved: which it is, and what people call it. */
final class SavedRow {
    private SavedRow() {}

    /** Ids of all rows, before one is saved. */
    static Set<String> ids(Desk desk, Thing thing) {
        return rows(desk, thing).stream().map(DayRows.RowText::id).collect(Collectors.toSet());
    }

    /**
     * The one with that id, the one that was not there before, or the one with the name that was typed; empty when
     * somebody has taken it out meanwhile.
     */
    static Optional<DayRows.RowText> of(
            Desk desk, Thing thing, String id, Set<String> before, Map<String, String> typed) {
        List<DayRows.RowText> rows = rows(desk, thing);
        String name = thing.shown().get(0);
        return first(rows, row -> row.id().equals(id))
                .or(() -> first(rows, row -> !before.contains(row.id())))
                .or(() -> first(rows, row -> row.cells().getOrDefault(name, "").equals(typed.get(name))));
    }

    private static List<DayRows.RowText> rows(Desk desk, Thing thing) {
        return DayRows.of(desk.day(), desk.zone(), thing.file());
    }

    private static Optional<DayRows.RowText> first(List<DayRows.RowText> rows, Predicate<DayRows.RowText> is) {
        return rows.stream().filter(is).findFirst();
    }

    /** As it is said after saving, for example "Saved: M1." */
    static String words(Thing thing, Map<String, String> cells) {
        String name = cells.getOrDefault(thing.shown().get(0), "");
        if (thing == Thing.WINDOWS) {
            name = (name.isEmpty() ? "all entries" : name) + ", " + cells.getOrDefault("opens", "");
        }
        return name.isEmpty() ? "Saved." : "Saved: " + name + ".";
    }
}

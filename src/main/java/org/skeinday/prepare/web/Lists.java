package org.skeinday.prepare.web;

import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.StationCheck;
import org.skeinday.exchange.CrewLineId;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.prepare.PrepareSteps;
import org.skeinday.prepare.Sheet;
import org.skeinday.units.Sentence;

/** A list of one kind of thing, with what is still to be done about each. */
final class Lists {
    private final Sheet thing;
    private final Day day;
    private final Clock clock;
    private final Map<String, Integer> cleanWinds;

    private final OptionalDouble pullN;

    /**
     * @param cleanWinds as the program has counted them, by person id
     * @param pullN what a mount must hold for today's motors, newtons; empty when that is not known
     */
    Lists(Sheet thing, Day day, Clock clock, Map<String, Integer> cleanWinds, OptionalDouble pullN) {
        this.pullN = pullN;
        this.cleanWinds = cleanWinds;
        this.thing = thing;
        this.day = day;
        this.clock = clock;
    }

    /** The clock's minute as files and forms have moments. */
    static String minute(Clock clock) {
        return DayRows.moment(clock.millis() / 60_000 * 60_000, clock.getZone());
    }

    /**
     * @param saved id of the row that was saved just before, empty for none @param did what that did beside it, in words
     * @param part which of the pages of rows
     */
    RowsView view(String saved, String did, PartOfRows part) {
        List<DayRows.RowText> all = new ArrayList<>(DayRows.of(day, clock.getZone(), thing.file()));
        if (thing == Sheet.FLIGHTS) {
            Collections.reverse(all); // the last ones are looked for
        }
        String toDo = PrepareSteps.of(day).stream()
                .filter(step -> step.thing() == thing)
                .map(PrepareSteps.Step::words)
                .findFirst()
                .orElse("There is none yet.");
        List<String> columns = thing.shown().stream()
                .map(c -> c.equals("k") ? "K" : Sentence.begin(c))
                .toList();
        String address = "/prepare/" + thing.path();
        return new RowsView(
                thing.title(),
                thing.one(),
                address,
                toDo,
                columns,
                part.of(all).stream().map(this::row).toList(),
                saved(all, saved, did),
                part.links(address, all.size()));
    }

    private RowsView.Row row(DayRows.RowText row) {
        return new RowsView.Row(
                "/prepare/" + thing.path() + "/row/" + row.id(),
                thing.shown().stream()
                        .map(column -> row.cells().getOrDefault(column, ""))
                        .toList(),
                notes(row.id()),
                confirm(row.id()));
    }

    /** What was saved, and where it goes on from there. */
    private RowsView.@Nullable Saved saved(List<DayRows.RowText> all, String id, String did) {
        return all.stream()
                .filter(row -> row.id().equals(id))
                .findFirst()
                .map(row -> PrepareSteps.next(day, thing)
                        .map(step -> new RowsView.Saved(
                                SavedRow.words(thing, row.cells()) + (did.isEmpty() ? "" : " " + did),
                                "/prepare/" + step.thing().path(),
                                "Next: " + step.title()))
                        .orElseGet(() -> new RowsView.Saved(
                                SavedRow.words(thing, row.cells()) + (did.isEmpty() ? "" : " " + did), "/", "To Now")))
                .orElse(null);
    }

    /** More clean winds than the line says, as the program has counted them. */
    private RowsView.@Nullable Confirm confirm(String id) {
        return thing != Sheet.CREW
                ? null
                : day.crew().stream()
                        .filter(c -> CrewLineId.of(c).is(id) && c.does("winds"))
                        .filter(c -> counted(c) > (c.cleanWinds() == null ? 0 : c.cleanWinds()))
                        .map(c -> new RowsView.Confirm(
                                id,
                                counted(c),
                                "The program has counted " + counted(c) + " clean "
                                        + (counted(c) == 1 ? "wind" : "winds") + "."))
                        .findFirst()
                        .orElse(null);
    }

    private int counted(CrewAdded crew) {
        return cleanWinds.getOrDefault(crew.personId(), 0);
    }

    private List<String> notes(String id) {
        return switch (thing) {
            case STATIONS ->
                day.more().stations().stream()
                        .filter(s -> s.id().equals(id))
                        .flatMap(s -> StationCheck.open(s, pullN).stream())
                        .toList();
            case CREW ->
                day.crew().stream()
                        .filter(c -> CrewLineId.of(c).is(id))
                        .map(CrewAdded::mayWind)
                        .filter(words -> !words.isEmpty())
                        .map(words -> "Winds " + words + ".")
                        .toList();
            default -> List.of();
        };
    }
}

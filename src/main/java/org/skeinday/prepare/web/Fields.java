package org.skeinday.prepare.web;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.Terms;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.prepare.FieldHints;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.TypedUnits;
import org.skeinday.units.Sentence;
import org.skeinday.units.UnitSystem;

/** The columns of a file as the fields of a form: what can be chosen is chosen, the rest is typed. */
final class Fields {
    private static final Set<String> DAYS = Set.of("day", "opened", "pull tested", "ratio checked", "calibrated");
    private static final Set<String> MOMENTS =
            Set.of("opens", "closes", "flown", "when", "ready", "inspected", "hand in by");
    private static final Set<String> COUNTS = Set.of(
            "attempts",
            "window minutes",
            "best of",
            "timekeepers",
            "declared motors",
            "log flights",
            "protest minutes",
            "breaking turns",
            "uses",
            "clean winds",
            "crank turns",
            "remaining",
            "back off",
            "winder ratio",
            "ratio");

    private final Sheet thing;
    private final Day day;
    private final UnitSystem units;

    /** @param units of the team: a bare number is in the one that stands under its field */
    Fields(Sheet thing, Day day, UnitSystem units) {
        this.thing = thing;
        this.day = day;
        this.units = units;
    }

    /** A column's name as a parameter: names with spaces make bad ids. */
    static String parameter(String column) {
        return column.replace(' ', '-');
    }

    /**
     * @param values text by column
     * @param messages what is wrong, by column
     */
    List<FormView.Field> of(Map<String, String> values, Map<String, String> messages) {
        return DayRows.columns(thing.file()).stream()
                .map(column ->
                        field(column, values.getOrDefault(column.name(), ""), messages.getOrDefault(column.name(), "")))
                .toList();
    }

    private FormView.Field field(Column column, String value, String message) {
        String name = column.name();
        List<String> several = several(name);
        List<String> one = several.isEmpty() ? oneOf(column) : List.of();
        String input = !several.isEmpty() ? "boxes" : !one.isEmpty() ? "select" : typed(name, value);
        String shown = input.equals("datetime-local") ? value.replace(' ', 'T') : value;
        return new FormView.Field(
                parameter(name),
                label(name),
                FieldHints.of(thing.file(), name),
                input,
                shown,
                message,
                column.must(),
                column.longest(),
                options(several.isEmpty() ? one : several, value, input.equals("boxes"), column),
                TypedUnits.under(column, units),
                "",
                false);
    }

    private static String label(String column) {
        String words = column.equals("k") ? "K" : column;
        return Sentence.begin(words);
    }

    /** What several may be ticked of. */
    private List<String> several(String column) {
        return switch (thing) {
            case ENTRIES ->
                column.equals("models")
                        ? names(day.models(), m -> m.name())
                        : column.equals("motors") ? names(day.motors(), m -> m.tag()) : List.of();
            case CREW -> column.equals("tasks") ? CrewAdded.ROLES : List.of();
            case TERMS -> column.equals("log columns") ? Terms.LOG_COLUMNS : List.of();
            default -> List.of();
        };
    }

    /** What one must be chosen of; empty for what is typed. */
    private List<String> oneOf(Column column) {
        if (!column.words().isEmpty()) {
            return column.words();
        }
        String name = column.name();
        boolean own = thing.shown().get(0).equals(name)
                && !thing.isOfOneEvent()
                && thing != Sheet.WINDOWS
                && thing != Sheet.NOTES;
        if (own) {
            return List.of();
        }
        return switch (name) {
            case "event" -> names(day.events(), e -> e.name());
            case "batch" -> names(day.batches(), b -> b.name());
            case "model" -> names(day.models(), m -> m.name());
            case "motor" -> names(day.motors(), m -> m.tag());
            case "entry" -> names(day.entries(), e -> e.name());
            case "winds", "reads", "loads", "times", "releases" -> thing == Sheet.ENTRIES ? cleared(name) : List.of();
            default -> List.of();
        };
    }

    private static <T> List<String> names(List<T> all, Function<T, String> name) {
        return all.stream().map(name).distinct().sorted().toList();
    }

    private List<String> cleared(String task) {
        return day.crew().stream()
                .filter(c -> c.does(task))
                .map(c -> day.people().getOrDefault(c.personId(), ""))
                .filter(name -> !name.isEmpty())
                .distinct()
                .sorted()
                .toList();
    }

    private static String typed(String column, String value) {
        if (DAYS.contains(column)) {
            return value.isEmpty() || value.matches("\\d{4}-\\d{2}-\\d{2}") ? "date" : "text";
        }
        if (MOMENTS.contains(column)) {
            // The hour that comes twice is written with its offset, which such a field cannot hold.
            return value.isEmpty() || value.matches("\\d{4}-\\d{2}-\\d{2}[ T][\\d:.]+") ? "datetime-local" : "text";
        }
        return COUNTS.contains(column) ? "number" : "text";
    }

    private static List<FormView.Option> options(List<String> all, String value, boolean boxes, Column column) {
        List<String> chosen = boxes
                ? Arrays.stream(value.split("[|]", -1)).map(String::strip).toList()
                : List.of(value.isEmpty() ? column.otherwise() : value);
        Stream<FormView.Option> options =
                all.stream().map(o -> new FormView.Option(o, FieldHints.word(o), chosen.contains(o)));
        boolean mayBeEmpty = !boxes
                && !all.isEmpty()
                && (column.words().isEmpty() || column.otherwise().isEmpty());
        if (!mayBeEmpty) {
            return options.toList();
        }
        boolean unknown = !value.isEmpty() && !all.contains(value);
        return Stream.concat(
                        Stream.concat(
                                Stream.of(new FormView.Option("", "–", value.isEmpty())),
                                unknown ? Stream.of(new FormView.Option(value, value, true)) : Stream.empty()),
                        options)
                .toList();
    }
}

package org.skeinday.hall.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.AirMeasured;
import org.skeinday.hall.Distance;
import org.skeinday.hall.HallDescribed;
import org.skeinday.hall.Judged;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.store.HallStore;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.units.Length;

/** A hall is described, its distances are set, its air is measured. */
public final class HallActions {
    private static final Set<String> TOPICS = Set.of("places", "checks", "attempts");
    private static final int LONGEST_NAME = 80;

    private final Reopens reopens;

    private HallActions(Reopens reopens) {
        this.reopens = reopens;
    }

    /**
     * The form as typed.
     *
     * @param obstructions one a line: its name, then its height
     * @param distances by the words of {@link Distance}; an empty one is the usual one
     * @param unit of lengths that were typed without one
     * @param mayLess whether less than the usual may be set: the coach's word
     */
    public record Describe(
            String hall,
            String ceiling,
            String obstructions,
            Map<String, String> distances,
            String note,
            String unit,
            boolean mayLess) {}

    /** Temperature in °C and relative humidity in %, as typed; either may be empty. */
    public record Measure(String hall, String celsius, String humidity) {}

    public record Which(String id) {}

    /** @param reopens what changed distances open again */
    public static List<ActKind<?>> kinds(Reopens reopens) {
        var deeds = new HallActions(reopens);
        return List.of(
                new ActKind<>("hall.describe", Describe.class, deeds::describe),
                new ActKind<>("air.measure", Measure.class, HallActions::measure),
                new ActKind<>("air.remove", Which.class, HallActions::remove));
    }

    private Decision describe(Tx tx, ActContext context, Describe typed) {
        var form = new TypedFields();
        @Nullable
        Length ceiling = form.read("ceiling", typed.ceiling(), text -> text.isEmpty() ? null : parsed(text, typed));
        List<HallDescribed.Obstruction> obstructions = new ArrayList<>();
        form.read("obstructions", typed.obstructions(), text -> {
            text.lines().filter(line -> !line.isBlank()).forEach(line -> obstructions.add(obstruction(line, typed)));
            return text;
        });
        List<HallDescribed.Kept> distances = new ArrayList<>();
        for (Distance distance : Distance.values()) {
            form.read(distance.word(), typed.distances().get(distance.word()), text -> {
                if (!text.isEmpty()) {
                    refuseLess(distance, parsed(text, typed), typed.mayLess());
                    distances.add(new HallDescribed.Kept(
                            distance.word(),
                            parsed(text, typed).millimetres(),
                            PlaceActions.withUnit(text, typed.unit())));
                }
                return text;
            });
        }
        PlaceActions.bounded(form, "place", "The hall's name", typed.hall(), HallDescribed.LONGEST_HALL);
        PlaceActions.bounded(form, "note", "A note", typed.note(), HallDescribed.LONGEST_NOTE);
        return form.refused().orElseGet(() -> described(tx, context, typed, ceiling, obstructions, distances));
    }

    private static void refuseLess(Distance distance, Length length, boolean mayLess) {
        if (!mayLess && length.compareTo(distance.usual()) < 0) {
            throw new IllegalArgumentException("Less than usual is the coach's word: ask the coach to set this");
        }
    }

    private Decision described(
            Tx tx,
            ActContext context,
            Describe typed,
            @Nullable Length ceiling,
            List<HallDescribed.Obstruction> obstructions,
            List<HallDescribed.Kept> distances) {
        try {
            var hall = new HallDescribed(
                    typed.hall().strip(),
                    ceiling == null ? null : (Double) ceiling.millimetres(),
                    ceiling == null ? null : PlaceActions.withUnit(typed.ceiling(), typed.unit()),
                    obstructions,
                    distances,
                    typed.note().strip(),
                    context.now().toEpochMilli(),
                    context.personOrNull());
            List<Fact> facts = new ArrayList<>(List.of(Fact.of("hall.described", hall)));
            facts.addAll(opened(tx, context, hall));
            return new Decision.Decided(facts, Map.of(), TOPICS);
        } catch (IllegalArgumentException e) {
            return Decision.refused("obstructions", String.valueOf(e.getMessage()));
        }
    }

    /** Distances that were enlarged may make the place in use wrong. */
    private List<Fact> opened(Tx tx, ActContext context, HallDescribed hall) {
        PlaceMeasured inUse = PlaceStore.inUse(tx).orElse(null);
        return inUse == null || !inUse.hall().equals(hall.hall())
                ? List.of()
                : reopens.by(tx, context, HallStore.judged(tx, inUse), new Judged(inUse, hall.separation()));
    }

    private static Length parsed(String text, Describe typed) {
        return Length.parse(text, typed.unit());
    }

    private static HallDescribed.Obstruction obstruction(String line, Describe typed) {
        var parts = java.util.regex.Pattern.compile("(.*?\\D)[\\s:,;]+([0-9][0-9.,]*\\s*\\S*)\\s*")
                .matcher(line.strip());
        if (!parts.matches() || parts.group(1).strip().length() > LONGEST_NAME) {
            throw new IllegalArgumentException("'" + line.strip()
                    + "' has no height; write its name and then its height, as in: scoreboard 6.2 m");
        }
        String height = parts.group(2).strip();
        return new HallDescribed.Obstruction(
                parts.group(1).strip().replaceAll("[:,;]$", ""),
                parsed(height, typed).millimetres(),
                PlaceActions.withUnit(height, typed.unit()));
    }

    private static Decision measure(Tx tx, ActContext context, Measure typed) {
        var form = new TypedFields();
        @Nullable
        Double celsius =
                form.read("celsius", typed.celsius(), text -> number(text, "20.5", "temperature in °C", -20, 60));
        @Nullable
        Double humidity = form.read("humidity", typed.humidity(), text -> number(text, "45", "humidity in %", 0, 100));
        if (celsius == null && humidity == null) {
            form.wrong("celsius", "Type a temperature, a humidity, or both");
        }
        if (typed.hall().isBlank()) {
            form.wrong("celsius", "Measure a winding place first: it says in which hall this is");
        }
        PlaceActions.bounded(form, "place", "The hall's name", typed.hall(), HallDescribed.LONGEST_HALL);
        return form.refused()
                .orElseGet(() -> Decision.decided(
                        TOPICS,
                        Fact.of(
                                "air.measured",
                                new AirMeasured(
                                        context.ownId(),
                                        typed.hall().strip(),
                                        celsius,
                                        humidity,
                                        context.now().toEpochMilli(),
                                        context.personOrNull()))));
    }

    private static Decision remove(Tx tx, ActContext context, Which which) {
        return HallStore.isMeasured(tx, which.id())
                ? Decision.decided(TOPICS, Fact.of("air.removed", new Removed(which.id())))
                : Decision.unknown("It is not there any more; look again");
    }

    private static @Nullable Double number(String text, String example, String what, double least, double most) {
        String number = text.replace(',', '.').replaceAll("\\s*(°C|C|%)$", "").replace('−', '-');
        if (number.isEmpty()) {
            return null;
        }
        if (!number.matches("-?[0-9]{1,3}(\\.[0-9]{1,2})?")
                || Double.parseDouble(number) < least
                || Double.parseDouble(number) > most) {
            throw new IllegalArgumentException("'" + text + "' is no " + what + "; write " + Math.round(least) + " to "
                    + Math.round(most) + ", for example " + example);
        }
        return Double.valueOf(number);
    }
}

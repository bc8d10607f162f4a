package org.skeinday.hall.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.HallDescribed;
import org.skeinday.hall.PlaceInUse;
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

/** A winding place is measured, taken into use, removed. */
public final class PlaceActions {
    private static final Set<String> TOPICS = Set.of("places", "checks", "attempts");
    private static final int LONGEST = 40;

    private final Reopens reopens;

    private PlaceActions(Reopens reopens) {
        this.reopens = reopens;
    }

    /** One row of the form as typed; one without a name is none. */
    public record Typed(String kind, String name, String how, String first, String second, String side, String blows) {}

    /**
     * The form as typed.
     *
     * @param id empty for a new place
     * @param unit of lengths that were typed without one
     */
    public record Measure(
            String id,
            String hall,
            String lane,
            String length,
            String past,
            String drift,
            String speed,
            String unit,
            List<Typed> things) {}

    /** The place that is meant. */
    public record Which(String id) {}

    /** @param reopens what a change opens again */
    public static List<ActKind<?>> kinds(Reopens reopens) {
        var deeds = new PlaceActions(reopens);
        return List.of(
                new ActKind<>("place.measure", Measure.class, deeds::measure),
                new ActKind<>("place.use", Which.class, deeds::use),
                new ActKind<>("place.remove", Which.class, deeds::remove));
    }

    private Decision measure(Tx tx, ActContext context, Measure typed) {
        @Nullable PlaceMeasured before = PlaceStore.find(tx, typed.id()).orElse(null);
        if (before == null && !typed.id().isEmpty()) {
            return Decision.unknown("There is no such place any more; look again");
        }
        var form = new TypedFields();
        if (typed.hall().isBlank()) {
            form.wrong("hall", "Name the hall");
        }
        bounded(form, "hall", "The hall's name", typed.hall(), HallDescribed.LONGEST_HALL);
        @Nullable Length lane = form.read("length", typed.length(), text -> Length.parse(filled(text), typed.unit()));
        @Nullable
        Length past = form.read("past", typed.past(), text -> text.isEmpty() ? null : Length.parse(text, typed.unit()));
        @Nullable Integer drift = form.read("drift", typed.drift(), PlaceActions::hour);
        @Nullable Double speed = form.read("speed", typed.speed(), PlaceActions::speed);
        List<PlaceMeasured.Thing> things = things(typed, form);
        if (lane == null || form.refused().isPresent()) {
            return form.refused().orElseThrow();
        }
        try {
            var place = new PlaceMeasured(
                    before == null ? context.ownId() : before.id(),
                    typed.hall().strip(),
                    typed.lane().isBlank() ? "lane" : typed.lane().strip(),
                    lane.millimetres(),
                    withUnit(typed.length(), typed.unit()),
                    past == null ? null : (Double) past.millimetres(),
                    past == null ? null : withUnit(typed.past(), typed.unit()),
                    drift,
                    speed,
                    things,
                    context.now().toEpochMilli(),
                    context.personOrNull());
            place.place();
            return decided(tx, context, place);
        } catch (IllegalArgumentException e) {
            return Decision.refused("place", String.valueOf(e.getMessage()));
        }
    }

    /** The first place is in use at once. */
    private Decision decided(Tx tx, ActContext context, PlaceMeasured place) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("place.measured", place)));
        @Nullable PlaceMeasured inUse = PlaceStore.inUse(tx).orElse(null);
        if (inUse == null) {
            facts.add(Fact.of(
                    "place.in-use", new PlaceInUse(place.id(), context.now().toEpochMilli())));
        }
        if (inUse == null || inUse.id().equals(place.id())) {
            facts.addAll(reopens.by(tx, context, HallStore.judged(tx, inUse), HallStore.judged(tx, place)));
        }
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    private Decision use(Tx tx, ActContext context, Which which) {
        PlaceMeasured place = PlaceStore.find(tx, which.id()).orElse(null);
        if (place == null) {
            return Decision.unknown("There is no such place any more; look again");
        }
        @Nullable PlaceMeasured before = PlaceStore.inUse(tx).orElse(null);
        if (before != null && before.id().equals(place.id())) {
            return Decision.refused("It is in use already");
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(
                Fact.of("place.in-use", new PlaceInUse(place.id(), context.now().toEpochMilli())));
        facts.addAll(reopens.by(tx, context, HallStore.judged(tx, before), HallStore.judged(tx, place)));
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    private Decision remove(Tx tx, ActContext context, Which which) {
        PlaceMeasured place = PlaceStore.find(tx, which.id()).orElse(null);
        if (place == null) {
            return Decision.unknown("There is no such place any more; look again");
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of("place.removed", new Removed(place.id())));
        if (PlaceStore.inUse(tx).filter(p -> p.id().equals(place.id())).isPresent()) {
            facts.addAll(reopens.by(tx, context, HallStore.judged(tx, place), null));
        }
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    private static List<PlaceMeasured.Thing> things(Measure typed, TypedFields form) {
        List<PlaceMeasured.Thing> things = new ArrayList<>();
        for (int i = 0; i < typed.things().size(); i++) {
            Typed row = typed.things().get(i);
            if (!row.name().isBlank() || !row.first().isBlank() || !row.second().isBlank()) {
                PlaceMeasured.@Nullable Thing thing =
                        form.read("thing" + i, row.name(), name -> thing(row, name, typed.unit()));
                if (thing != null) {
                    things.add(thing);
                }
            }
        }
        return things;
    }

    private static PlaceMeasured.Thing thing(Typed row, String name, String unit) {
        if (name.isEmpty()) {
            throw new IllegalArgumentException("Name what was measured, or empty its row");
        }
        Length first = Length.parse(filled(row.first()), unit);
        Length second = Length.parse(filled(row.second()), unit);
        return new PlaceMeasured.Thing(
                row.kind(),
                name,
                row.how(),
                first.millimetres(),
                withUnit(row.first(), unit),
                second.millimetres(),
                withUnit(row.second(), unit),
                row.side(),
                row.kind().equals(PlaceMeasured.FAN) ? hour(row.blows()) : null);
    }

    private static String filled(String text) {
        if (text.isBlank() || text.length() > LONGEST) {
            throw new IllegalArgumentException("Measure this by tape, for example 1.5 m or 5 ft");
        }
        return text.strip();
    }

    /** @throws IllegalArgumentException for more than the record keeps */
    static String withUnit(String typed, String unit) {
        String text = typed.strip();
        String whole = text.matches(".*[0-9.,]$") ? text + " " + unit : text;
        if (whole.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "A length with its unit has at most " + LONGEST + " characters, for example 1.5 m or 5 ft");
        }
        return whole;
    }

    static void bounded(TypedFields form, String field, String what, String typed, int longest) {
        if (typed.strip().length() > longest) {
            form.wrong(field, what + " has at most " + longest + " characters");
        }
    }

    private static @Nullable Integer hour(String typed) {
        if (typed.isBlank()) {
            return null;
        }
        if (!typed.strip().matches("1[0-2]|[1-9]")) {
            throw new IllegalArgumentException("'" + typed.strip()
                    + "' is no hour of the clock; from the mount 12 is to the winder, 3 to the right");
        }
        return Integer.valueOf(typed.strip());
    }

    private static @Nullable Double speed(String typed) {
        if (typed.isEmpty()) {
            return null;
        }
        String number = typed.replaceFirst("(?<=[0-9]) ?m/s$", "").replace(',', '.');
        if (!number.matches("[0-5](\\.[0-9]{1,2})?")) {
            throw new IllegalArgumentException("'" + typed + "' is no drift; write 0 to 5 m/s, for example 0.2");
        }
        return Double.valueOf(number);
    }
}

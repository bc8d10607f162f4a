package org.skeinday.hall.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.Side;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.UnitSystem;

/**
 * The form as it stands: what was typed, else what is kept.
 *
 * @param id empty for a new place
 * @param unit of a length without one: what stood there while a form that is shown again was filled in
 */
public record PlaceForm(
        String id,
        String hall,
        String lane,
        String length,
        String past,
        String drift,
        String speed,
        String unit,
        List<Row> rows) {
    /** So many rows are there for what is still to be measured. */
    private static final int SPARE = 3;

    /** @param wrong what is wrong with it, empty when nothing is */
    public record Row(
            int number,
            String kind,
            String name,
            String how,
            String first,
            String second,
            String side,
            String blows,
            String wrong) {}

    /** The unit as a sentence has it. */
    public String unitWords() {
        return unit.equals("m") ? "metres" : unit.equals("ft") ? "feet" : unit;
    }

    static PlaceForm of(@Nullable PlaceMeasured place, FormErrors form, UnitSystem units) {
        List<PlaceMeasured.Thing> things = place == null ? List.of() : place.things();
        List<Row> rows = new ArrayList<>();
        int sent = sent(form);
        int count = Math.min(PlaceMeasured.MOST_THINGS, Math.max(sent, things.size() + SPARE));
        for (int i = 0; i < count; i++) {
            rows.add(row(i, i < things.size() ? things.get(i) : null, form));
        }
        return new PlaceForm(
                form.typedOr("id", place == null ? "" : place.id()),
                form.typedOr("hall", place == null ? "" : place.hall()),
                form.typedOr("lane", place == null ? "" : place.lane()),
                form.typedOr("length", place == null ? "" : place.laneTyped()),
                form.typedOr("past", text(place == null ? null : place.pastWinderTyped())),
                form.typedOr("drift", text(place == null ? null : place.driftHour())),
                form.typedOr("speed", text(place == null ? null : place.driftMps())),
                form.typedOr("unit", units.roomUnit()),
                rows);
    }

    private static int sent(FormErrors form) {
        int rows = 0;
        while (form.typed().containsKey("name" + rows)) {
            rows++;
        }
        return rows;
    }

    private static Row row(int i, PlaceMeasured.@Nullable Thing thing, FormErrors form) {
        return new Row(
                i,
                form.typedOr("kind" + i, thing == null ? "stand" : thing.kind()),
                form.typedOr("name" + i, thing == null ? "" : thing.name()),
                form.typedOr("how" + i, thing == null ? PlaceMeasured.How.BESIDE.word() : thing.how()),
                form.typedOr("first" + i, thing == null ? "" : thing.firstTyped()),
                form.typedOr("second" + i, thing == null ? "" : thing.secondTyped()),
                form.typedOr("side" + i, thing == null ? Side.LEFT.word() : thing.side()),
                form.typedOr("blows" + i, text(thing == null ? null : thing.blowsHour())),
                form.message("thing" + i));
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : String.valueOf(value);
    }

    /** Kinds of things, each with its words. */
    public static List<String> kinds() {
        return PlaceMeasured.kinds();
    }

    public static String words(String kind) {
        return switch (kind) {
            case "stand" -> "model stand";
            case "fan" -> "fan or door";
            case "launch" -> "launch spot";
            case "lane-mount" -> "other lane's mount";
            case "lane-winder" -> "other lane's winder end";
            default -> kind;
        };
    }

    /** Ways to measure, in the order in which a form offers them. */
    public static List<PlaceMeasured.How> ways() {
        return List.of(PlaceMeasured.How.values());
    }

    public static List<Side> sides() {
        return List.of(Side.values());
    }
}

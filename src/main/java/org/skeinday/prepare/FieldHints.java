package org.skeinday.prepare;

import java.util.HashMap;
import java.util.Map;
import org.skeinday.motor.Direction;
import org.skeinday.motor.MotorPlace;

/** How a form asks: what stands under a field's name. */
public final class FieldHints {
    private static final Map<String, String> BY_COLUMN = Map.ofEntries(
            Map.entry(
                    "event.csv/kind",
                    "visiting: officials elsewhere time; hosting: this laptop keeps the official record"),
            Map.entry("event.csv/ceiling", "the lowest that a model can touch, for example 8.4 m"),
            Map.entry("event.csv/attempts", "official ones of each entry"),
            Map.entry("event.csv/window minutes", "0 for none"),
            Map.entry("event.csv/score", "of the best attempts that count"),
            Map.entry("event.csv/best of", "how many of them count"),
            Map.entry("event.csv/take", "which of the watches becomes the time"),
            Map.entry("event.csv/if two", "when only two watches count"),
            Map.entry("event.csv/to", "seconds, for example 0.1"),
            Map.entry("event.csv/round watches first", "each watch, not only the result"),
            Map.entry("event.csv/minimum", "a shorter flight is no official one; 0 for none"),
            Map.entry("event.csv/winder ratio", "motor turns to one crank turn"),
            Map.entry("event.csv/lane", "room to wind, hook to hook, for example 4 m"),
            Map.entry("terms.csv/devices", "stands: at the winding places only; none: not at the table"),
            Map.entry(
                    "terms.csv/outside help",
                    "none: from call to sign-off no page shows advice, forecasts or others' readings"),
            Map.entry("terms.csv/motor limit", "as inspected, for example 1.5 g"),
            Map.entry("terms.csv/model least", "without the motor, for example 4 g"),
            Map.entry("terms.csv/declared motors", "most for each entry; empty for any number"),
            Map.entry("terms.csv/reinspection", "motors are weighed again after the flight"),
            Map.entry("terms.csv/log flights", "how many flights the required log must show; 0 for no log"),
            Map.entry("terms.csv/log columns", "what must stand in it"),
            Map.entry("terms.csv/sections", "as the officials cite them, for a dispute"),
            Map.entry("terms.csv/protest minutes", "from the announcement of a time"),
            Map.entry("terms.csv/hand in by", "when motors are handed in before the flights; empty when they are not"),
            Map.entry("terms.csv/spread limit", "watches further apart are put before a person; empty for 0.3 s"),
            Map.entry(
                    "terms.csv/one watch left",
                    "of several: person: the captain says whether it counts; take: it does"),
            Map.entry(
                    "rules.csv/held watched", "seconds until the flight is over; empty when the rules do not name it"),
            Map.entry("rules.csv/held deduct", "seconds then taken off; empty for all that was watched"),
            Map.entry(
                    "rules.csv/if caught",
                    "held at 0:40 and down at 1:00: runs-on counts 1:00; less counts 0:40 once it was held for the seconds"
                            + " below; ends counts 0:40 at once"),
            Map.entry("rules.csv/start again", "whether a flight that ended early so may be flown again"),
            Map.entry("rules.csv/repeats", "of a flight below the event's minimum, for each official one"),
            Map.entry("rules.csv/repeats in all", "for an entry; empty for no limit"),
            Map.entry("rules.csv/short again", "when no repeat is left: it brings no time, or its time counts"),
            Map.entry("rules.csv/collision", "choice: the entry keeps its time or flies again"),
            Map.entry("rules.csv/time to choose", "seconds, from when the entry was told"),
            Map.entry("rules.csv/ties", "by the next best single time, by the best alone, or a shared place"),
            Map.entry("rules.csv/drop best", "attempts; then the mean of the rest is the score"),
            Map.entry("rules.csv/drop worst", "attempts; one not flown counts as the worst"),
            Map.entry(
                    "rules.csv/mean ranks",
                    "exact: 1:00.004 is before 1:00.003; rounded: both are 1:00.00 and ties part them; empty for exact, with"
                            + " dropped attempts for rounded"),
            Map.entry("rules.csv/last call", "before the window closes; 0 for none"),
            Map.entry("entries.csv/call order", "1 is called first within a window; empty for by name"),
            Map.entry("models.csv/direction", "how its motor is wound, seen from the winder"),
            Map.entry("models.csv/hook distance", "between the hooks, for example 9.5 in"),
            Map.entry("models.csv/mass", "without the motor, for example 4.1 g"),
            Map.entry(
                    "models.csv/motors",
                    "1, or 2 on a model that carries two: it is kept, while plans and cards are for one motor"),
            Map.entry("batches.csv/batch", "your own name for the lot"),
            Map.entry("batches.csv/width", "for example 2.4 mm"),
            Map.entry("batches.csv/thickness", "for example 1.05 mm"),
            Map.entry("batches.csv/k", "breaking turns = K · L^1.5 / m^0.5 (inches, grams); empty until a break test"),
            Map.entry("motors.csv/tag", "what stands on its bag"),
            Map.entry("motors.csv/direction", "for life, seen from the winder"),
            Map.entry("motors.csv/loop", "relaxed, ring to ring, for example 18.5 in"),
            Map.entry("motors.csv/mass", "rubber only, dry, for example 1.62 g"),
            Map.entry("motors.csv/breaking turns", "its own, in motor turns; empty to take the batch's K"),
            Map.entry("motors.csv/uses", "full windings before the first flight that is on record here"),
            Map.entry("motors.csv/inspected mass", "with rings and lubricant, for example 1.65 g"),
            Map.entry("crew.csv/event", "empty for every event"),
            Map.entry("crew.csv/tasks", "what this person is cleared for"),
            Map.entry("crew.csv/team", "when you host: whose entries this person does not time; else empty"),
            Map.entry("crew.csv/clean winds", "to plan, without a fault: 3 for the lower ceiling, 5 for the full one"),
            Map.entry("entries.csv/own", "of your own team"),
            Map.entry("entries.csv/motors", "declared for this event"),
            Map.entry("windows.csv/entry", "empty for all entries"),
            Map.entry("stations.csv/mount", "held by a person is not advised"),
            Map.entry("stations.csv/pull test", "newtons that the mount has held; motors pull about 5"),
            Map.entry("stations.csv/winder ratio", "as counted at one marked crank turn"),
            Map.entry("stations.csv/output turns", "the hook, with or against the crank, as seen over one marked turn"),
            Map.entry("stations.csv/output checked", "the day of that turn"),
            Map.entry("stations.csv/output checked by", "who watched the hook, of the crew"),
            Map.entry("stations.csv/zero", "what the meter shows unloaded"),
            Map.entry("stations.csv/span", "known=shown at three torques, up and down: 0.2=0.21 | 0.4=0.41 | 0.6=0.60"),
            Map.entry("stations.csv/known mass", "a mass that you know, to check the scale, for example 2 g"),
            Map.entry("notes.csv/ready", "when the glue has cured; empty when it may fly"),
            Map.entry("flights.csv/ratio", "motor turns to one crank turn"),
            Map.entry("flights.csv/time", "for example 1:43.6"),
            Map.entry("flights.csv/remaining", "crank turns left after landing"),
            Map.entry("flights.csv/valid", "no keeps it out of averages and forecasts"),
            Map.entry("flights.csv/reason", "when it is not valid, for example touched the wall"));

    /** Codes of the files as people say them. */
    private static final Map<String, String> WORDS = words();

    private static Map<String, String> words() {
        Map<String, String> words = new HashMap<>(Map.of(
                "held", "held by a person (not advised)",
                "no-time", "no time",
                "next", "the next best"));
        for (Direction direction : Direction.values()) {
            words.put(direction.word(), direction.words());
        }
        for (MotorPlace place : MotorPlace.values()) {
            words.put(place.word(), place.words());
        }
        return Map.copyOf(words);
    }

    private FieldHints() {}

    /** A choice in words. */
    public static String word(String choice) {
        return WORDS.getOrDefault(choice, choice);
    }

    /** Empty where the name says it all. */
    public static String of(String file, String column) {
        return BY_COLUMN.getOrDefault(file + "/" + column, "");
    }
}

package org.skeinday.hall;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code place.measured}: a winding place with its tape numbers, each also as typed; again under the same id when
 * something was measured anew.
 *
 * @param hall name of the hall
 * @param lane name of the lane, {@code laneMm} hook to hook
 * @param pastWinderMm free floor past the winder end; null when nobody measured
 * @param driftHour where the air goes, said at the mount looking at the winder: 12 is away, 3 to the right; null when nobody
 *     looked
 * @param driftMps 0 to 5 m/s; null when only the direction was seen
 * @param atMs by the server's clock, epoch ms
 */
public record PlaceMeasured(
        String id,
        String hall,
        String lane,
        double laneMm,
        String laneTyped,
        @Nullable Double pastWinderMm,
        @Nullable String pastWinderTyped,
        @Nullable Integer driftHour,
        @Nullable Double driftMps,
        List<Thing> things,
        long atMs,
        @Nullable String personId) {
    /** What stands there, beside {@link Placed.Kind}: a fan or door, the launch spot, the two ends of another lane. */
    public static final String FAN = "fan";

    public static final String LAUNCH = "launch";
    public static final String LANE_MOUNT = "lane-mount";
    public static final String LANE_WINDER = "lane-winder";

    /** More are not kept apart on a drawing. */
    public static final int MOST_THINGS = 16;

    public PlaceMeasured {
        things = List.copyOf(things);
        Preconditions.filled("The hall's name", hall, HallDescribed.LONGEST_HALL);
        Preconditions.atMost("The lane's name", lane, HallDescribed.LONGEST_NAME);
        if (things.size() > MOST_THINGS) {
            throw new IllegalArgumentException(
                    "A winding place must have at most " + MOST_THINGS + " things around it, but had " + things.size());
        }
        if (driftHour == null && driftMps != null) {
            throw new IllegalArgumentException("A drift with a speed must have a direction too, but had none");
        }
    }

    /**
     * One thing by two tapes.
     *
     * @param kind a word of {@link Placed.Kind}, or one of the others above
     * @param how a word of {@link How}
     * @param side left or right of the line, seen from the mount
     * @param blowsHour where a fan blows to; null when that is not known, and of anything else
     */
    public record Thing(
            String kind,
            String name,
            String how,
            double firstMm,
            String firstTyped,
            double secondMm,
            String secondTyped,
            String side,
            @Nullable Integer blowsHour) {
        public Thing {
            Preconditions.filled("What stands beside the lane", name, HallDescribed.LONGEST_NAME);
            How.ofWord(how);
            Side.ofWord(side);
        }

        public How way() {
            return How.ofWord(how);
        }

        Taped at() {
            return way().taped(Length.ofMillimetres(firstMm), Length.ofMillimetres(secondMm), Side.ofWord(side));
        }
    }

    /** What the two numbers are. */
    public enum How {
        BESIDE("from mount along, then beside"),
        /** Beside the lengthened line. */
        BEHIND("behind mount, then beside"),
        ENDS("from mount, from winder end");

        private final String words;

        How(String words) {
            this.words = words;
        }

        /** As the record has it. */
        public String word() {
            return EnumWords.of(this);
        }

        /** For people. */
        public String words() {
            return words;
        }

        /** @throws IllegalArgumentException for another word */
        static How ofWord(String word) {
            return EnumWords.parse("The way to measure", How.class, word);
        }

        Taped taped(Length first, Length second, Side side) {
            return switch (this) {
                case BESIDE -> Taped.beside(first, second, side);
                case BEHIND -> Taped.behindMount(first, second, side);
                case ENDS -> Taped.fromEnds(first, second, side);
            };
        }
    }

    /** All kinds of things, in the order in which a form offers them. */
    public static List<String> kinds() {
        List<String> kinds = new ArrayList<>(Placed.Kind.WORDS);
        kinds.addAll(List.of(FAN, LAUNCH, LANE_MOUNT, LANE_WINDER));
        return List.copyOf(kinds);
    }

    /**
     * As it is judged and drawn.
     *
     * @throws IllegalArgumentException when a name stands twice, another lane lacks an end, or a number is out of its range
     */
    public WindingPlace place() {
        List<Placed> placed = new ArrayList<>();
        List<Fan> fans = new ArrayList<>();
        Map<String, Taped> mounts = new LinkedHashMap<>();
        Map<String, Taped> winders = new LinkedHashMap<>();
        @Nullable Taped launch = null;
        for (Thing thing : things) {
            switch (thing.kind()) {
                case FAN -> fans.add(new Fan(thing.name(), thing.at(), blows(thing)));
                case LAUNCH -> launch = thing.at();
                case LANE_MOUNT -> mounts.put(thing.name(), thing.at());
                case LANE_WINDER -> winders.put(thing.name(), thing.at());
                default -> placed.add(new Placed(thing.name(), Placed.Kind.ofWord(thing.kind()), thing.at()));
            }
        }
        return new WindingPlace(
                new Lane(lane, Length.ofMillimetres(laneMm)),
                placed,
                others(mounts, winders),
                pastWinderMm == null ? null : Length.ofMillimetres(pastWinderMm),
                driftHour == null ? null : Air.towardsOClock(driftHour, driftMps),
                fans,
                launch);
    }

    private static @Nullable Air blows(Thing fan) {
        Integer hour = fan.blowsHour();
        return hour == null ? null : Air.towardsOClock(hour, null);
    }

    private static List<OtherLane> others(Map<String, Taped> mounts, Map<String, Taped> winders) {
        List<OtherLane> others = new ArrayList<>();
        mounts.forEach((name, mount) -> others.add(new OtherLane(name, mount, end(name, winders))));
        winders.keySet().stream()
                .filter(name -> !mounts.containsKey(name))
                .findFirst()
                .ifPresent(PlaceMeasured::oneEnd);
        return others;
    }

    private static Taped end(String name, Map<String, Taped> winders) {
        Taped winder = winders.get(name);
        if (winder == null) {
            oneEnd(name);
            throw new IllegalStateException(name);
        }
        return winder;
    }

    private static void oneEnd(String name) {
        throw new IllegalArgumentException(
                "The other lane '" + name
                        + "' must have its mount and its winder end measured, each as a row with this name, but had one of them");
    }
}

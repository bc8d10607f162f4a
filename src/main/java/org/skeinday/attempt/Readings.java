package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.skeinday.timing.TimeDecision;
import org.skeinday.timing.WatchReading;
import org.skeinday.timing.Watches;
import org.skeinday.timing.WatchesRule;
import org.skeinday.units.FlightTime;

/** Which readings of a flight count: of each timekeeper the last that no later one corrects. */
public final class Readings {
    private Readings() {}

    /** What a person must look at before these become an official time; empty when they agree. */
    public static List<String> doubts(List<ReadingTaken> all, List<WatchJudged> judged, WatchesRule rule) {
        List<String> doubts = new ArrayList<>(contradictions(all, judged));
        Watches watches = watches(all, judged);
        if (!watches.readings().isEmpty() && watches.decide(rule) instanceof TimeDecision.ForAPerson open) {
            doubts.addAll(open.reasons());
        }
        return doubts;
    }

    /** One entry for each timekeeper who is heard of, after what the captain decided of the watches. */
    public static Watches watches(List<ReadingTaken> all, List<WatchJudged> judged) {
        TreeMap<Integer, WatchReading> watches = new TreeMap<>();
        thatCount(all)
                .forEach(r -> watches.put(
                        r.slot(), new WatchReading.Counted(String.valueOf(r.slot()), new FlightTime(r.durationMs()))));
        last(judged).values().forEach(word -> {
            String name = String.valueOf(word.slot());
            if (word.verdict().equals("failed")) {
                watches.put(word.slot(), new WatchReading.Failed(name, word.reason()));
            } else if (word.verdict().equals("left-out")
                    && watches.get(word.slot()) instanceof WatchReading.Counted counted) {
                watches.put(word.slot(), counted.leaveOut("the captain", word.reason()));
            }
        });
        return new Watches(List.copyOf(watches.values()));
    }

    private static TreeMap<Integer, WatchJudged> last(List<WatchJudged> judged) {
        TreeMap<Integer, WatchJudged> last = new TreeMap<>();
        judged.forEach(word -> last.put(word.slot(), word));
        return last;
    }

    /** Watches that count and have sent more than one time. */
    private static List<String> contradictions(List<ReadingTaken> all, List<WatchJudged> judged) {
        List<String> doubts = new ArrayList<>();
        Set<String> corrected = corrected(all);
        for (WatchReading.Counted watch : watches(all, judged).counted()) {
            List<String> times = all.stream()
                    .filter(r -> watch.watch().equals(String.valueOf(r.slot())) && !corrected.contains(r.id()))
                    .map(r -> new FlightTime(r.durationMs()).text(2))
                    .toList();
            if (times.size() > 1) {
                doubts.add("Watch " + watch.watch() + " has sent " + String.join(" and ", times)
                        + ", none as a correction: the last would count. Ask its timekeeper.");
            }
        }
        return doubts;
    }

    private static Set<String> corrected(List<ReadingTaken> all) {
        Set<String> corrected = new HashSet<>();
        all.forEach(reading -> {
            if (reading.corrects() != null) {
                corrected.add(reading.corrects());
            }
        });
        return corrected;
    }

    /** @param all as they came in; @return one for each timekeeper's place, in the order of places */
    public static List<ReadingTaken> thatCount(List<ReadingTaken> all) {
        Set<String> corrected = corrected(all);
        TreeMap<Integer, ReadingTaken> bySlot = new TreeMap<>();
        all.stream().filter(r -> !corrected.contains(r.id())).forEach(r -> bySlot.put(r.slot(), r));
        return new ArrayList<>(bySlot.values());
    }
}

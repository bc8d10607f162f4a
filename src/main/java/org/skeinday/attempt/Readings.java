package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.skeinday.units.FlightTime;

/** Which readings of a flight count: of each timekeeper the last that no later one corrects. */
public final class Readings {
    /** Watches further apart than this are put before a person (domain: hand timing differs by 0.19 ± 0.14 s). */
    public static final long SPREAD_MS = 300;

    private Readings() {}

    /** What a person must look at before these become an official time; empty when they agree. */
    public static List<String> doubts(List<ReadingTaken> all) {
        List<String> doubts = new ArrayList<>();
        List<ReadingTaken> counting = thatCount(all);
        Set<String> corrected = corrected(all);
        for (ReadingTaken reading : counting) {
            List<String> times = all.stream()
                    .filter(r -> r.slot() == reading.slot() && !corrected.contains(r.id()))
                    .map(r -> new FlightTime(r.durationMs()).text(2))
                    .toList();
            if (times.size() > 1) {
                doubts.add("Watch " + reading.slot() + " has sent " + String.join(" and ", times)
                        + ", none as a correction: the last would count. Ask its timekeeper.");
            }
        }
        var range = counting.stream().mapToLong(ReadingTaken::durationMs).summaryStatistics();
        if (range.getCount() > 1 && range.getMax() - range.getMin() > SPREAD_MS) {
            doubts.add("The watches are " + new FlightTime(range.getMax() - range.getMin()).seconds(2)
                    + " s apart. Ask the timekeepers before the official time is taken.");
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

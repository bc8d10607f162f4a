package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/** Which readings of a flight count: of each timekeeper the last that no later one corrects. */
public final class Readings {
    private Readings() {}

    /** @param all as they came in; @return one for each timekeeper's place, in the order of places */
    public static List<ReadingTaken> thatCount(List<ReadingTaken> all) {
        Set<String> corrected = new HashSet<>();
        all.forEach(reading -> {
            if (reading.corrects() != null) {
                corrected.add(reading.corrects());
            }
        });
        TreeMap<Integer, ReadingTaken> bySlot = new TreeMap<>();
        all.stream().filter(r -> !corrected.contains(r.id())).forEach(r -> bySlot.put(r.slot(), r));
        return new ArrayList<>(bySlot.values());
    }
}

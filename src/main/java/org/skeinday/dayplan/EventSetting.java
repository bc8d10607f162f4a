package org.skeinday.dayplan;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.skeinday.units.Preconditions;

/**
 * What the chains of an event share.
 *
 * @param stations winding stations
 * @param air models that may fly at once
 * @param timekeepers in all, and {@code perFlight} for each flight
 * @param startInside whether the release must lie inside the window, else the landing, too
 * @param longestHold seconds from the end of winding to release; never shorter than loading takes
 * @param careful whether parts are planned at their 90th percentile, else at their median
 * @param crew with the clearances {@link #WINDS} and {@link #LOADS}; nobody is asked for when empty
 * @param motorRest seconds from the end of winding until a motor may be wound again
 */
public record EventSetting(
        int stations,
        int air,
        int timekeepers,
        int perFlight,
        boolean startInside,
        long longestHold,
        boolean careful,
        List<Person> crew,
        SortedMap<String, Long> motorRest) {
    /** Winds to the ceiling that is asked for. */
    public static final String WINDS = "winds";
    /** Carries a wound motor onto the model. */
    public static final String LOADS = "loads";

    public EventSetting {
        Preconditions.within("Winding stations", (long) stations, 1, 1000);
        Preconditions.within("Models in the air at once", (long) air, 1, 1000);
        Preconditions.within("Timekeepers", (long) timekeepers, 0, 1000);
        Preconditions.within("Timekeepers for a flight", (long) perFlight, 0, 100);
        PlanTime.span("The longest hold", longestHold);
        crew = List.copyOf(crew);
        motorRest = Collections.unmodifiableSortedMap(new TreeMap<>(motorRest));
    }

    /** One station, one model in the air, one timekeeper, release inside the window, hold at most 60 s, careful. */
    public static EventSetting smallest() {
        return new EventSetting(1, 1, 1, 1, true, 60, true, List.of(), new TreeMap<>());
    }

    public EventSetting with(int winding, int flying, int timing, int each) {
        return new EventSetting(winding, flying, timing, each, startInside, longestHold, careful, crew, motorRest);
    }

    public EventSetting withCrew(List<Person> people) {
        return new EventSetting(
                stations, air, timekeepers, perFlight, startInside, longestHold, careful, people, motorRest);
    }
}

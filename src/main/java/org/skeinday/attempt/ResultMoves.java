package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.skeinday.units.FlightTime;

/** What a change moves of a result: times and places, as the sheet before and the sheet after have them. */
public record ResultMoves(List<Time> times, List<Place> places) {
    private static final int NAMED = 12;

    /** An official time that is another. @param decimals of it, as the rules of before and of after round */
    public record Time(String attempt, String title, long beforeMs, int decimalsBefore, long afterMs, int decimals) {
        private String words() {
            return title + ": " + new FlightTime(beforeMs).text(decimalsBefore) + " → "
                    + new FlightTime(afterMs).text(decimals);
        }
    }

    /** An entry that has another place. @param before, after 0 for none */
    public record Place(String entry, int before, int after) {
        private String words() {
            return entry + ": place " + (before == 0 ? "–" : before) + " → " + (after == 0 ? "–" : after);
        }
    }

    public ResultMoves {
        times = List.copyOf(times);
        places = List.copyOf(places);
    }

    /** Compares two sheets of the same entries. */
    public static ResultMoves of(ResultSheet before, ResultSheet after, List<Time> times) {
        Map<String, Integer> then = before.lines().stream()
                .collect(Collectors.toMap(line -> line.entry().id(), ResultSheet.Line::place));
        List<Place> places = after.lines().stream()
                .map(line -> new Place(
                        line.entry().name(), then.getOrDefault(line.entry().id(), 0), line.place()))
                .filter(place -> place.before() != place.after())
                .toList();
        return new ResultMoves(times, places);
    }

    public boolean none() {
        return times.isEmpty() && places.isEmpty();
    }

    /** For example {@code 7 times and 3 places change: …}. */
    public String words() {
        if (none()) {
            return "No time and no place changes.";
        }
        List<String> all = new ArrayList<>(times.stream().map(Time::words).toList());
        all.addAll(places.stream().map(Place::words).toList());
        String more = all.size() > NAMED ? "; and " + (all.size() - NAMED) + " more" : "";
        return (times.isEmpty() ? "No time" : count(times.size(), "time", "times")) + " and "
                + count(places.size(), "place", "places")
                + (times.size() + places.size() == 1 ? " changes: " : " change: ")
                + all.stream().limit(NAMED).collect(Collectors.joining("; ")) + more + ".";
    }

    private static String count(int n, String one, String many) {
        return (n == 0 ? "no" : String.valueOf(n)) + " " + (n == 1 ? one : many);
    }
}

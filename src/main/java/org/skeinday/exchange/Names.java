package org.skeinday.exchange;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The ids behind the names of one kind of thing, and where each name stands. */
final class Names {
    /** What is right in a form where a file would leave its line out. */
    static final String CHANGE_ONE = "choose another, or change that one";

    private static final int MOST_SAID = 12;
    private static final int MOST_SUGGESTED = 100;

    private final String what;
    private final Map<String, Place> places = new TreeMap<>();
    private final Map<String, String> inSmallLetters = new HashMap<>();
    private int asked;

    /** @param line 0 for what the record has already */
    private record Place(String id, int line) {}

    /** @param what the thing's word, for example motor */
    Names(String what) {
        this.what = what;
    }

    String what() {
        return what;
    }

    void inRecord(String name, String id) {
        places.put(name, new Place(id, 0));
        inSmallLetters.putIfAbsent(name.toLowerCase(Locale.ROOT), name);
    }

    /** Another name that differs from this one by capital letters only. */
    Optional<String> alike(String name) {
        return Optional.ofNullable(inSmallLetters.get(name.toLowerCase(Locale.ROOT)))
                .filter(other -> !other.equals(name) && !name.isEmpty());
    }

    boolean isInRecord(String name) {
        Place place = places.get(name);
        return place != null && place.line() == 0;
    }

    /** Notes a new name; one that is there already is an error that names both places. */
    void add(Row row, String column, String name, String shown, String id) {
        Place first = name.isEmpty() ? null : places.putIfAbsent(name, new Place(id, row.line()));
        if (first == null) {
            inSmallLetters.putIfAbsent(name.toLowerCase(Locale.ROOT), name);
            return;
        }
        if (first.line() == 0) {
            row.error(
                    column,
                    "the " + what + " " + shown + " is in the record already",
                    "leave this line out, or import into another data folder",
                    CHANGE_ONE);
        } else {
            row.error(
                    column,
                    "the " + what + " " + shown + " is on line " + first.line() + " and again on line " + row.line(),
                    "keep one of the two lines, or make them differ");
        }
    }

    /** The name of an id, for a sentence; the id itself when it has none. */
    String nameOf(String id) {
        return places.entrySet().stream()
                .filter(e -> e.getValue().id().equals(id))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(id);
    }

    Optional<String> id(String name) {
        return Optional.ofNullable(places.get(name)).map(Place::id);
    }

    /** The id of the only one there is; those of the files before those of the record. */
    Optional<String> only() {
        // Asked for each row that names none: two are enough to know.
        var fresh = places.values().stream().filter(p -> p.line() > 0).limit(2).toList();
        var those = fresh.isEmpty() ? places.values().stream().limit(2).toList() : fresh;
        return those.size() == 1 ? Optional.of(those.get(0).id()) : Optional.empty();
    }

    /** What would be right instead of a name that is not there. */
    String suggestion(String typed) {
        if (places.isEmpty()) {
            return "add it to its own file; so far there is none";
        }
        if (++asked > MOST_SUGGESTED) { // thousands of slips would each be compared with thousands of names
            return oneOf();
        }
        return "did you mean '" + Nearest.to(typed, places.keySet()).orElseThrow() + "'? Known are " + known();
    }

    /** What would be right where no name was written. */
    String oneOf() {
        return places.isEmpty() ? "add one to its own file; so far there is none" : "write one of " + known();
    }

    /** All of them, or as many as one can read. */
    private String known() {
        String first = places.keySet().stream().limit(MOST_SAID).collect(Collectors.joining(", "));
        return places.size() > MOST_SAID ? first + " and " + (places.size() - MOST_SAID) + " more" : first;
    }
}

package org.skeinday.prepare;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What is prepared: each kind of thing with its file, its words and the columns that its list shows. */
public enum Sheet {
    EVENTS("event.csv", "Events and rules", "event", List.of("name", "kind", "day", "hall", "attempts", "score")),
    TERMS("terms.csv", "Terms", "terms of an event", List.of("event", "outside help", "motor limit", "log flights")),
    RULES(
            "rules.csv",
            "Flight rules",
            "rules of an event",
            List.of("event", "repeats", "held watched", "collision", "ties")),
    MODELS("models.csv", "Models", "model", List.of("model", "team", "direction", "hook distance", "mass")),
    BATCHES("batches.csv", "Batches", "batch", List.of("batch", "width", "thickness", "k", "opened")),
    MOTORS("motors.csv", "Motors", "motor", List.of("tag", "batch", "direction", "loop", "mass", "place")),
    CREW("crew.csv", "Crew", "person", List.of("name", "event", "tasks", "clean winds", "team")),
    ENTRIES("entries.csv", "Entries", "entry", List.of("entry", "team", "models", "motors", "own", "event")),
    WINDOWS("windows.csv", "Windows", "window", List.of("entry", "opens", "closes", "event")),
    STATIONS(
            "stations.csv",
            "Winding places",
            "winding place",
            List.of("station", "mount", "winder ratio", "output turns", "meter")),
    NOTES("notes.csv", "Trim and repairs", "note", List.of("model", "kind", "when", "note", "ready")),
    FLIGHTS("flights.csv", "Flights", "flight", List.of("flown", "model", "motor", "crank turns", "time", "note"));

    private final String file;
    private final String title;
    private final String one;
    private final List<String> shown;

    Sheet(String file, String title, String one, List<String> shown) {
        this.file = file;
        this.title = title;
        this.one = one;
        this.shown = shown;
    }

    /** As it stands in an address. */
    public String path() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    public static Optional<Sheet> ofPath(String path) {
        return Arrays.stream(values()).filter(t -> t.path().equals(path)).findFirst();
    }

    public static Sheet ofFile(String file) {
        return Arrays.stream(values())
                .filter(t -> t.file.equals(file))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("Nothing is prepared in '" + file + "'"));
    }

    public String file() {
        return file;
    }

    public String title() {
        return title;
    }

    /** Whether each event has just one of it, which is changed and not taken out. */
    public boolean isOfOneEvent() {
        return this == TERMS || this == RULES;
    }

    /** One of them, in a sentence. */
    public String one() {
        return one;
    }

    public List<String> shown() {
        return shown;
    }
}

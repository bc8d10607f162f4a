package org.skeinday.hall;

/** The two ends of a lane. */
enum End {
    MOUNT("mount", Rule.IN_LINE_WITH_MOUNT),
    WINDER("winder end", Rule.IN_LINE_WITH_WINDER);

    private final String name;
    private final Rule rule;

    End(String name, Rule rule) {
        this.name = name;
        this.rule = rule;
    }

    String words() {
        return "the " + name;
    }

    /** Of this lane: the room past it in which nobody stands. */
    String zone() {
        return "the zone past the " + name;
    }

    /** The same of another lane. */
    String theirZone() {
        return "the zone past its " + name;
    }

    /** What a person in line with it breaks. */
    Rule rule() {
        return rule;
    }
}

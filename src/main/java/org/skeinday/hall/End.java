package org.skeinday.hall;

/** The two ends of a lane. */
enum End {
    MOUNT("the mount", Rule.IN_LINE_WITH_MOUNT),
    WINDER("the winder end", Rule.IN_LINE_WITH_WINDER);

    private final String words;
    private final Rule rule;

    End(String words, Rule rule) {
        this.words = words;
        this.rule = rule;
    }

    String words() {
        return words;
    }

    /** What a person in line with it breaks. */
    Rule rule() {
        return rule;
    }
}

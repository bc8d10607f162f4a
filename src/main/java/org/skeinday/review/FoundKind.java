package org.skeinday.review;

/** What can be found; in the order in which results stand that fit alike. */
public enum FoundKind {
    ATTEMPT("attempt"),
    BATCH("batch"),
    CHANGE("change next time"),
    ENTRY("entry"),
    EVENT("event"),
    FLIGHT("flight"),
    MODEL("model"),
    MOTOR("motor"),
    PERSON("person"),
    NOTE("trim or repair");

    private final String words;

    FoundKind(String words) {
        this.words = words;
    }

    /** For people. */
    public String words() {
        return words;
    }
}

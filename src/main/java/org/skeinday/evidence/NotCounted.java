package org.skeinday.evidence;

/** Why something of the record enters no average, fit or forecast. The record keeps it all the same. */
public enum NotCounted {
    /** It touched something, and nobody has said what that means. */
    UNDECIDED("undecided"),
    /** Somebody left it out. */
    LEFT_OUT("left out"),
    /** A balloon or a pole moved it along. */
    STEERED("left out"),
    /** Proposed by a form, and not confirmed. */
    OFFERED("offered, not measured"),
    /** Unlikely or impossible, and not confirmed. */
    DOUBTED("doubted"),
    /** A wind whose turns were not counted. */
    TURNS_NOT_COUNTED("turns not counted"),
    /** A wind that was cranked to a metronome. */
    TO_A_METRONOME("to a metronome");

    private final String words;

    NotCounted(String words) {
        this.words = words;
    }

    /** As a person reads it. */
    public String words() {
        return words;
    }
}

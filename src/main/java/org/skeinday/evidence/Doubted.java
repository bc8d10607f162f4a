package org.skeinday.evidence;

/** A value that is asked about. @param words one sentence with its numbers and the rule */
public record Doubted(Unlikely why, String words) {
    public Measured about() {
        return why.about();
    }

    /** Whether that number may be the wrong one. */
    public boolean concerns(Measured what) {
        return why.numbers().contains(what);
    }
}

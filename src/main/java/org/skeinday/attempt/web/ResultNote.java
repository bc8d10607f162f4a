package org.skeinday.attempt.web;

/** What a try is that is no official flight with its own time: the words on sheet, wall and files, and what they mean. */
enum ResultNote {
    REPEATED("short, may be repeated", "below the minimum, flown again for the same attempt"),
    SHORT_USED_UP("short, used up", "below the minimum with no repeat left: uses the attempt up, brings no time"),
    USED_UP("used up", "void, uses the attempt up"),
    FLOWN_AGAIN("flown again", "void, uses nothing up"),
    BEYOND("beyond the last", "flown after the last attempt of the rules, does not count"),
    PROTESTED("protested", "a protest is open");

    private final String words;
    private final String means;

    ResultNote(String words, String means) {
        this.words = words;
        this.means = means;
    }

    String words() {
        return words;
    }

    String means() {
        return means;
    }

    /** Whether it is among the notes of a cell, which a comma parts. */
    boolean standsIn(String notes) {
        return notes.equals(words) || notes.startsWith(words + ",") || notes.endsWith(", " + words);
    }
}

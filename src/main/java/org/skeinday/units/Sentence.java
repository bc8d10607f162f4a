package org.skeinday.units;

/** Words as the begin of a sentence. */
public final class Sentence {
    private Sentence() {}

    /** With a capital letter. @param words not empty */
    public static String begin(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}

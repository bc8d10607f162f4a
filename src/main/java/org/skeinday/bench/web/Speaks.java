package org.skeinday.bench.web;

/**
 * Who speaks to the winder, from the first crank turn to the release.
 *
 * @param reader who reads the meter, empty where nobody is named
 * @param winder who winds, empty where nobody is named
 */
record Speaks(String reader, String winder) {
    static final Speaks NOBODY_NAMED = new Speaks("", "");

    String words() {
        String to = winder.isEmpty() ? "the winder" : winder;
        String only = !winder.isEmpty() && winder.equals(reader)
                ? "Nobody speaks to " + winder + ", who reads alone."
                : "Only " + (reader.isEmpty() ? "the reader" : reader) + " speaks to " + to + ".";
        return only + " Anyone may say stop.";
    }
}

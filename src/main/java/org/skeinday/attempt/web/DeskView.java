package org.skeinday.attempt.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;

/**
 * What waits for whoever is chief of a hosted day, in finished words.
 *
 * @param finding how much waits
 * @param doubts that stand against a time which has not been taken
 * @param toSign official times without all of their signatures
 * @param protests that are open
 * @param late readings that came in after their attempt was closed
 * @param corrected results that were opened again and are not signed anew
 */
public record DeskView(
        String finding,
        List<Item> doubts,
        List<ToSign> toSign,
        List<Item> protests,
        List<Item> late,
        List<Item> corrected,
        FormErrors form) {
    /** One thing. @param path where it is decided */
    public record Item(String path, String title, String words) {}

    /**
     * One official time.
     *
     * @param value of its box in the form
     * @param signed who has and who must
     * @param captain whether the captain's signature is missing
     */
    public record ToSign(String path, String title, String time, String value, String signed, boolean captain) {}

    public boolean isEmpty() {
        return doubts.isEmpty() && toSign.isEmpty() && protests.isEmpty() && late.isEmpty() && corrected.isEmpty();
    }

    /** Whether there is anything that the captain can sign here. */
    public boolean captainSigns() {
        return toSign.stream().anyMatch(ToSign::captain);
    }
}

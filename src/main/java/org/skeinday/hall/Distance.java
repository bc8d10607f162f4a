package org.skeinday.hall;

import java.util.Arrays;
import java.util.Optional;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/**
 * One of the distances that are kept at a winding place, with what is usual and the most that can be meant. That a parting
 * line recoils towards and past its ends is known of mooring lines (OCIMF 2015, MAIB digests), their distances are not ours:
 * each is reviewed at the place and can be set for each hall.
 */
public enum Distance {
    /** 1.2 m, 4 ft (common practice). */
    MODEL("Models from the line and its ends", 1200, 20_000),
    /** 1.5 m (observers of stretched elastic, school laboratory sheets). */
    PEOPLE("People from the line and its ends", 1500, 20_000),
    /** As people (own default); the needle has to be read from there, so a coach may set less. */
    READER("The reader from the line", 1500, 20_000),
    /** 3 m: as far as a motor is commonly stretched (own default). */
    PAST_END("Nobody past an end for", 3000, 50_000),
    /** 1 m (own default). */
    PAST_END_BESIDE("There, to each side", 1000, 20_000),
    /** As people (own default). */
    LANES("One lane from the other", 1500, 20_000),
    /** 0.5 m (common practice). */
    STANDING("Room for the winder's feet", 500, 5_000);

    private final String words;
    private final double usualMm;
    private final double mostMm;

    Distance(String words, double usualMm, double mostMm) {
        this.words = words;
        this.usualMm = usualMm;
        this.mostMm = mostMm;
    }

    /** As a form's label says it. */
    public String words() {
        return words;
    }

    /** As facts and fields have it. */
    public String word() {
        return EnumWords.of(this);
    }

    public static Optional<Distance> ofWord(String word) {
        return Arrays.stream(values()).filter(d -> d.word().equals(word)).findFirst();
    }

    public Length usual() {
        return Length.ofMillimetres(usualMm);
    }

    /** @throws IllegalArgumentException unless 1 mm to the most that can be meant */
    void check(Length length) {
        Preconditions.within(words + " in mm", length.millimetres(), 1, mostMm);
    }
}

package org.skeinday.steps;

import java.util.Set;
import org.skeinday.units.Preconditions;

/**
 * A caution where it bites.
 *
 * @param what to do or leave, one sentence
 * @param why, one sentence
 */
public record Caution(String id, Hazard hazard, Set<Moment> moments, String what, String why) {
    public Caution {
        moments = Set.copyOf(moments);
        Preconditions.filled("A caution's id", id);
        Preconditions.within(
                "The number of moments at which '" + id + "' bites", moments.size(), 1, Moment.values().length);
        beOneSentence(what);
        beOneSentence(why);
    }

    private static void beOneSentence(String text) {
        if (!text.matches("[A-Z][^.!?]*\\.")) {
            throw new IllegalArgumentException("A caution must say one sentence, but said '" + text + "'");
        }
    }
}

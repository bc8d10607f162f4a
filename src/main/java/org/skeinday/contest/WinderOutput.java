package org.skeinday.contest;

import java.util.List;
import org.skeinday.motor.Direction;
import org.skeinday.units.EnumWords;

/**
 * Which way a winder's hook turns for its crank, both seen by whoever cranks: gears turn it around or do not. Known from one
 * marked turn, watched at the hook.
 */
public enum WinderOutput {
    WITH,
    AGAINST;

    /** As the record and files have them. */
    public static final List<String> WORDS = EnumWords.of(WinderOutput.class);

    /** @throws IllegalArgumentException for a word that is none of {@link #WORDS} */
    public static WinderOutput of(String word) {
        return EnumWords.parse("The way that the hook turns", WinderOutput.class, word);
    }

    public String word() {
        return EnumWords.of(this);
    }

    /** Which way the crank goes so that the hook turns as it must. @param hook seen from the winder */
    public Direction crankFor(Direction hook) {
        return this == WITH ? hook : hook.other();
    }
}

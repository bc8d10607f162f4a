package org.skeinday.hall;

import java.util.List;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/** A model stand or a person beside a lane. */
public record Placed(String name, Kind kind, Taped at) {
    public enum Kind {
        STAND,
        SPECTATOR,
        HELPER,
        READER;

        public static final List<String> WORDS = EnumWords.of(Kind.class);

        public boolean isPerson() {
            return this != STAND;
        }

        /** @throws IllegalArgumentException for another word */
        public static Kind ofWord(String word) {
            return EnumWords.parse("What stands beside a lane", Kind.class, word);
        }
    }

    public Placed {
        Preconditions.filled("The name of what stands beside the lane", name);
    }
}

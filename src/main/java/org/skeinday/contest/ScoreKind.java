package org.skeinday.contest;

import org.skeinday.units.EnumWords;

/** What is made of an entry's best times. */
public enum ScoreKind {
    BEST,
    SUM,
    MEAN;

    /** As the record and files have it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** For people. @param bestOf how many times count */
    public String words(int bestOf) {
        return switch (this) {
            case BEST -> "Best";
            case SUM -> "Sum of best " + bestOf;
            case MEAN -> "Mean of best " + bestOf;
        };
    }
}

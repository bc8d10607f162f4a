package org.skeinday.timing;

import org.skeinday.units.EnumWords;

/** Which time of several watches is taken. */
public enum Take {
    MIDDLE,
    MEAN,
    LONGER,
    SHORTER;

    /** As the record, files and people have it. */
    public String word() {
        return EnumWords.of(this);
    }
}

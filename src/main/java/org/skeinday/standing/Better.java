package org.skeinday.standing;

import java.util.Comparator;

/** Which of two times is the better one. */
public enum Better {
    LONGER,
    SHORTER;

    /** The better one first. */
    public Comparator<Long> first() {
        return this == LONGER ? Comparator.reverseOrder() : Comparator.naturalOrder();
    }
}

package org.skeinday.standing;

/** What parts entries of equal score. */
public enum TieRule {
    /** Nothing: they share a place. */
    SHARED(0),
    /** The best single time, then they share a place. */
    BEST_SINGLE(1),
    /** The best single time, then the next best, and so on. */
    NEXT_BEST(Integer.MAX_VALUE);

    private final int singles;

    TieRule(int singles) {
        this.singles = singles;
    }

    /** How many single times are looked at. */
    int singles() {
        return singles;
    }
}

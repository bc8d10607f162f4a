package org.skeinday.platform.record;

/**
 * The ids of what one act makes: the act's id and a number, each handed out once. All are of one length, so that they sort in
 * the order in which they were made.
 */
public final class NewIds {
    private static final int FIRST = 1_000_000;

    private final String actId;
    private int next = FIRST;
    private boolean isOwnGiven;

    /** @param actId of the act, or any other beginning for ids that never reach the record */
    public NewIds(String actId) {
        this.actId = actId;
    }

    /** @throws IllegalStateException the second time: two things of one id would be one row, and nobody would see it */
    String own() {
        if (isOwnGiven) {
            throw new IllegalStateException("Act " + actId + " has given its own id to a thing already");
        }
        isOwnGiven = true;
        return ActContext.ownIdOf(actId);
    }

    public String next() {
        return actId + "-" + next++;
    }
}

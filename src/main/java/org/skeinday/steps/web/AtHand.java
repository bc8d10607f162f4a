package org.skeinday.steps.web;

import java.util.Optional;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;

/** What the lists ask of the day, which rooms after this one know. */
public interface AtHand {
    /**
     * An own attempt.
     *
     * @param state its word: called, winding, holding, released, landed or closed
     * @param closedMs epoch ms; 0 while it is open
     */
    record Attempt(String id, String title, String state, long closedMs) {}

    /** The one under way, else the one closed last. */
    Optional<Attempt> attempt(Tx tx);

    /** Whether no own entry has an attempt left. */
    boolean isOver(Tx tx);

    /** Of today's motors; empty when there is none. */
    Optional<Length> longestStretch(Tx tx);

    /** What the strongest of them pulls and what the mount is tested with, in words; empty when it is not known. */
    Optional<String> pull(Tx tx);
}

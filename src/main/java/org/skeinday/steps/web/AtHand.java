package org.skeinday.steps.web;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

/** What the lists ask of the day, which rooms after this one know. */
public interface AtHand {
    /**
     * An own attempt.
     *
     * @param station winding place at which it is wound; null where none is prepared
     * @param strip where it stands, in words
     * @param closedMs epoch ms; 0 while it is open
     */
    record Attempt(String id, String title, @Nullable String station, Stage stage, StripView strip, long closedMs) {}

    /** Where an attempt stands, as far as lists ask for it. */
    enum Stage {
        CALLED,
        /** From the first crank turn to the release, and until what is wound is safe: nothing is asked. */
        WOUND,
        IN_THE_AIR,
        LANDED,
        CLOSED
    }

    /** Those under way, the most urgent first; else the one closed last. */
    List<Attempt> attempts(Tx tx);

    /** Whether no own entry has an attempt left. */
    boolean isOver(Tx tx);

    /** Of today's motors; empty when there is none. */
    Optional<Length> longestStretch(Tx tx);

    /** What the strongest of them pulls and what the mount is tested with, in words; empty when it is not known. */
    Optional<String> pull(Tx tx);

    /** The team's units with torques as the meter shows them that the list is about. @param subject an attempt, or anything else */
    UnitSystem units(Tx tx, String subject, UnitSystem team);

    /** Motor turns of one crank turn of the winder that the list is about. @param subject an attempt, or anything else */
    Optional<Double> winderRatio(Tx tx, String subject);
}

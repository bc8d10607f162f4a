package org.skeinday.attempt;

import java.util.Optional;
import org.skeinday.contest.EntryAdded;

/** An entry flies its own team's models with its own team's motors, whatever a form says. */
public final class RightTeam {
    private RightTeam() {}

    /**
     * Why an entry may not have this; empty when it may.
     *
     * @param what in words, for example {@code motor A3}
     * @param team of the motor or model
     */
    public static Optional<String> whyNot(EntryAdded entry, String what, String team) {
        return entry.team().equals(team)
                ? Optional.empty()
                : Optional.of(entry.name() + " takes part for " + named(entry.team()) + ", but " + what + " belongs to "
                        + named(team) + "; choose one of the list");
    }

    private static String named(String team) {
        return team.isBlank() ? "no team" : team;
    }
}

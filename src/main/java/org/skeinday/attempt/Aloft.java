package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.aloft}: what happened to a model in the air beside its watches, as the captain saw it; a later one
 * stands in place of it. What a watch marked of the same is kept with the watch.
 *
 * @param caughtMs when the building, or somebody, caught it, ms after the release; null when nothing did
 * @param freedMs when it flew on, ms after the release; null when nobody saw it freed
 * @param caughtBy building or person; null when it was not caught
 * @param stillHeld whether it was held for as long as the rules have it watched, or until it was fetched
 * @param steered none, balloon or pole: such a flight says nothing of model and motor
 */
public record Aloft(
        String attemptId,
        @Nullable Long caughtMs,
        @Nullable Long freedMs,
        @Nullable String caughtBy,
        boolean stillHeld,
        String steered) {
    /** What holds it. */
    public enum Catcher {
        BUILDING,
        PERSON
    }

    /** What a helper moved it along with. */
    public enum Steering {
        NONE,
        BALLOON,
        POLE
    }

    public static final List<String> CAUGHT_BY = EnumWords.of(Catcher.class);
    public static final List<String> STEERED = EnumWords.of(Steering.class);
    private static final String WHAT_CAUGHT = "What caught it";
    private static final String WHAT_STEERED = "What it was steered with";

    public Aloft {
        Preconditions.within("A catch in ms after the release", caughtMs, 0, ReadingTaken.LONGEST_MS);
        Preconditions.within("Free again in ms after the release", freedMs, 0, ReadingTaken.LONGEST_MS);
        Preconditions.oneOf(WHAT_STEERED, steered, STEERED);
        if (caughtBy != null) {
            Preconditions.oneOf(WHAT_CAUGHT, caughtBy, CAUGHT_BY);
        }
        if (freedMs != null && (caughtMs == null || freedMs < caughtMs)) {
            throw new IllegalArgumentException("A model must be free again after it was caught, but was caught at "
                    + caughtMs + " and free at " + freedMs + " ms");
        }
        if (stillHeld && (caughtMs == null || freedMs != null)) {
            throw new IllegalArgumentException("A model that is still held must be caught and not free again");
        }
    }

    /** Nothing happened to it. */
    public static Aloft free(String attemptId) {
        return new Aloft(attemptId, null, null, null, false, EnumWords.of(Steering.NONE));
    }

    public Aloft caught(long ms, String by) {
        return new Aloft(attemptId, ms, null, by, false, steered);
    }

    /** @param caughtAtMs when it was caught, as anybody saw it, ms after the release */
    public Aloft freed(long ms, long caughtAtMs) {
        return new Aloft(attemptId, caughtAtMs, Math.max(ms, caughtAtMs), byWhom(), false, steered);
    }

    /** @param caughtAtMs as {@link #freed} */
    public Aloft stillHeld(long caughtAtMs) {
        return new Aloft(attemptId, caughtAtMs, null, byWhom(), true, steered);
    }

    public Aloft steered(String with) {
        return new Aloft(attemptId, caughtMs, freedMs, caughtBy, stillHeld, with);
    }

    private String byWhom() {
        return caughtBy == null ? EnumWords.of(Catcher.BUILDING) : caughtBy;
    }

    public boolean wasSteered() {
        return EnumWords.parse(WHAT_STEERED, Steering.class, steered) != Steering.NONE;
    }

    /** Why the flight enters no average, fit or forecast, unless somebody gave another reason; empty where it may. */
    public Optional<String> saysNothing() {
        return wasSteered() ? Optional.of("steered with a " + steered) : Optional.empty();
    }

    /** For example {@code caught at 0:42 by the building, free again at 0:45; steered with a pole}; empty for nothing. */
    public String words() {
        List<String> words = new ArrayList<>();
        if (caughtMs != null) {
            words.add("caught at " + time(caughtMs) + " by " + (byWhom().equals("person") ? "somebody" : "the building")
                    + (freedMs != null ? ", free again at " + time(freedMs) : stillHeld ? ", still held" : ""));
        }
        saysNothing().ifPresent(words::add);
        return String.join("; ", words);
    }

    private static String time(long ms) {
        return new FlightTime(ms / 100 * 100).text(1);
    }
}

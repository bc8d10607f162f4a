package org.skeinday.attempt;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where one attempt stands, with exactly what is true then. Made in one place ({@link LiveAttempt}); every page reads it and
 * none works it out again. Moments are ms since 1970 UTC by the server's clock.
 */
public sealed interface AttemptPhase {
    /** The phases in the order in which a day goes through them; the exits stand last. */
    enum Name {
        NEXT,
        CALLED,
        WINDING,
        HOLDING,
        IN_THE_AIR,
        LANDED,
        OFFICIAL,
        /** The motor parted: people first, then where it parted, then the spare. */
        BROKE,
        /** Given up, or the hall was stopped, while turns are on: it is run back before anything else. */
        RUN_BACK,
        ABANDONED,
        VOID;

        /** Whether nothing more happens to the attempt by itself. */
        public boolean isOver() {
            return this == OFFICIAL || this == ABANDONED || this == VOID;
        }
    }

    Name name();

    /** Since when it stands there; empty for an attempt that nobody has called. */
    Optional<Long> since();

    /** To be called. */
    record Next() implements AttemptPhase {
        @Override
        public Name name() {
            return Name.NEXT;
        }

        @Override
        public Optional<Long> since() {
            return Optional.empty();
        }
    }

    /**
     * Called; nothing is wound.
     *
     * @param winds that were begun before and came to nothing: the next one is the second, third…
     */
    record Called(long sinceMs, int winds) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.CALLED;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /** @param wind which wind of the attempt it is, from 1 */
    record Winding(long sinceMs, int wind) implements AttemptPhase {
        public Winding {
            if (wind < 1) {
                throw new IllegalArgumentException("The first wind of an attempt is 1, but was " + wind);
            }
        }

        @Override
        public Name name() {
            return Name.WINDING;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /** @param sinceMs of the last turn put on: turns that are taken off again do not restart the hold */
    record Holding(long sinceMs, int wind) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.HOLDING;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /**
     * Before anything else is asked: is everybody unhurt, are both ends found.
     *
     * @param peopleSafe whether somebody has said so
     * @param where it parted, as far as somebody looked
     */
    record Broke(
            long sinceMs, String motorId, boolean peopleSafe, @Nullable BreakPlace where)
            implements AttemptPhase {
        @Override
        public Name name() {
            return Name.BROKE;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /** @param motorId that still has turns on */
    record RunBack(long sinceMs, String motorId) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.RUN_BACK;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /** @param caughtMs after the release, when the building last caught it and still holds it; null while it flies free */
    record InTheAir(long sinceMs, @Nullable Long caughtMs) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.IN_THE_AIR;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /**
     * Down; its time is not official yet.
     *
     * @param watchesIn whose time counts so far
     * @param watchesWanted by the event's rules
     */
    record Landed(long sinceMs, int watchesIn, int watchesWanted) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.LANDED;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /**
     * Its time is logged, announced or signed, as the kind of day has it.
     *
     * @param missing signatures that are still owed; 0 where none are asked for
     */
    record Official(long sinceMs, long officialMs, int missing) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.OFFICIAL;
        }

        @Override
        public Optional<Long> since() {
            return Optional.of(sinceMs);
        }
    }

    /** Given up before its release. */
    record Abandoned(@Nullable Long atMs, String reason) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.ABANDONED;
        }

        @Override
        public Optional<Long> since() {
            return Optional.ofNullable(atMs);
        }
    }

    /** Given up after its release. @param again whether it is flown again and uses up nothing */
    record Void(@Nullable Long atMs, String reason, boolean again) implements AttemptPhase {
        @Override
        public Name name() {
            return Name.VOID;
        }

        @Override
        public Optional<Long> since() {
            return Optional.ofNullable(atMs);
        }
    }
}

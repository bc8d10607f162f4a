package org.skeinday.attempt;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakPlace;

/**
 * Where one attempt stands, with exactly what is true then. Made in one place ({@link LiveAttempt}); every page reads it and
 * none works it out again. Moments are ms since 1970 UTC by the server's clock; 0 where a record from a file does not have
 * them.
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
        /** Given up while turns are on: it is run back before anything else. */
        RUN_BACK,
        ABANDONED,
        VOID;

        /** Whether nothing more happens to the attempt by itself. */
        public boolean isOver() {
            return this == OFFICIAL || this == ABANDONED || this == VOID;
        }

        /** Wound, or to be wound next: with nothing broken, and nothing to be run back. */
        public boolean isBeforeRelease() {
            return this == CALLED || this == WINDING || this == HOLDING;
        }

        /** Whether the model was released. */
        public boolean hasFlown() {
            return this == IN_THE_AIR || this == LANDED || this == OFFICIAL || this == VOID;
        }

        /** Which of several attempts the pages put first, the most pressing one first. */
        public Urgency urgency() {
            return switch (this) {
                case BROKE, RUN_BACK -> Urgency.PEOPLE;
                case WINDING, HOLDING, IN_THE_AIR -> Urgency.RUNS;
                case LANDED -> Urgency.WAITS_FOR_A_TIME;
                case NEXT, CALLED, OFFICIAL, ABANDONED, VOID -> Urgency.CAN_WAIT;
            };
        }

        /** Comes before everything else: people after a break, turns that are still on. */
        public boolean isUrgent() {
            return this == BROKE || this == RUN_BACK;
        }
    }

    /** Kinds of attempts that are under way, in the order in which they are looked after. */
    enum Urgency {
        PEOPLE,
        RUNS,
        WAITS_FOR_A_TIME,
        CAN_WAIT
    }

    Name name();

    /** Since when it stands there; empty for an attempt that nobody has called. */
    default Optional<Long> since() {
        return Optional.empty();
    }

    /** A phase that began at a moment. */
    sealed interface Begun extends AttemptPhase {
        long sinceMs();

        @Override
        default Optional<Long> since() {
            return Optional.of(sinceMs());
        }
    }

    /** To be called. */
    record Next() implements AttemptPhase {
        @Override
        public Name name() {
            return Name.NEXT;
        }
    }

    /**
     * Called; nothing is wound.
     *
     * @param wind which wind comes: 2 or more after a break or a motor that was run back
     */
    record Called(long sinceMs, int wind) implements Begun {
        @Override
        public Name name() {
            return Name.CALLED;
        }
    }

    /** @param wind which wind of the attempt it is, from 1 */
    record Winding(long sinceMs, int wind) implements Begun {
        @Override
        public Name name() {
            return Name.WINDING;
        }
    }

    /** @param sinceMs of the last turn put on: turns that are taken off again do not restart the hold */
    record Holding(long sinceMs, int wind) implements Begun {
        @Override
        public Name name() {
            return Name.HOLDING;
        }
    }

    /**
     * Before anything else is asked: is everybody unhurt, are both ends found.
     *
     * @param peopleSafe whether somebody has said so
     * @param where it parted, null until somebody looked
     * @param givenUp whether the attempt was given up already: then no other motor follows
     */
    record Broke(
            long sinceMs,
            String motorId,
            boolean peopleSafe,
            @Nullable BreakPlace where,
            boolean givenUp) implements Begun {
        @Override
        public Name name() {
            return Name.BROKE;
        }
    }

    /** @param motorId that still has turns on */
    record RunBack(long sinceMs, String motorId) implements Begun {
        @Override
        public Name name() {
            return Name.RUN_BACK;
        }
    }

    /**
     * @param caughtMs after the release, when the building caught it that still holds it; null while it flies free
     * @param motorBroke whether somebody has said that its motor broke
     */
    record InTheAir(long sinceMs, @Nullable Long caughtMs, boolean motorBroke) implements Begun {
        @Override
        public Name name() {
            return Name.IN_THE_AIR;
        }
    }

    /**
     * Down; its time is not official yet.
     *
     * @param watchesIn whose time counts so far
     * @param watchesWanted by the event's rules
     * @param heldMs for how long the building, or somebody, held it at a time in the air; null when nothing did
     */
    record Landed(
            long sinceMs,
            int watchesIn,
            int watchesWanted,
            @Nullable Long heldMs) implements Begun {
        @Override
        public Name name() {
            return Name.LANDED;
        }
    }

    /**
     * Its time is logged, announced or signed, as the kind of day has it.
     *
     * @param missing signatures that are still owed; 0 where none are asked for
     */
    record Official(long sinceMs, long officialMs, int missing) implements Begun {
        @Override
        public Name name() {
            return Name.OFFICIAL;
        }
    }

    /** Given up before its release, with nothing wound. */
    record Abandoned(long sinceMs, String reason) implements Begun {
        @Override
        public Name name() {
            return Name.ABANDONED;
        }
    }

    /** Given up after its release. @param again whether it is flown again and uses up nothing */
    record DeclaredVoid(long sinceMs, String reason, boolean again) implements Begun {
        @Override
        public Name name() {
            return Name.VOID;
        }
    }
}

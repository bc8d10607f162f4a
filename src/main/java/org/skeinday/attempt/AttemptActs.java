package org.skeinday.attempt;

import static org.skeinday.attempt.AttemptAct.*;

import java.util.EnumSet;
import java.util.Set;

/**
 * Who may do what in which phase, in the order of the keys. The hands rule: from the first crank turn to the release whoever
 * winds, loads or releases has no key; the first watch started is the release. From every phase that is not over there is a
 * way on and a way out for the captain.
 */
public final class AttemptActs {
    private AttemptActs() {}

    /** All that its phase has: the captain may do whatever others may. */
    public static Set<AttemptAct> of(LiveAttempt attempt) {
        return of(attempt, Hands.CAPTAIN);
    }

    /** Without a motor, as other teams' attempts are, nothing is known to break or to be run back. */
    public static Set<AttemptAct> of(LiveAttempt attempt, Hands hands) {
        Set<AttemptAct> acts = of(attempt.phase(), hands);
        if (attempt.motorId() == null) {
            acts.removeAll(EnumSet.of(SOME_OFF, BROKE, RUN_BACK));
        }
        return acts;
    }

    /** @param hands of whoever asks */
    static Set<AttemptAct> of(AttemptPhase phase, Hands hands) {
        return switch (hands) {
            case NONE -> none();
            case ON_THE_MOTOR -> onTheMotor(phase);
            case READER -> reader(phase);
            case TIMEKEEPER -> timekeeper(phase);
            case CAPTAIN -> captain(phase);
        };
    }

    /** Free hands once it broke, or is to be run back: then whoever is nearest tells. */
    private static Set<AttemptAct> onTheMotor(AttemptPhase phase) {
        return switch (phase.name()) {
            case BROKE -> ((AttemptPhase.Broke) phase).peopleSafe() ? none() : EnumSet.of(PEOPLE_SAFE);
            case RUN_BACK -> EnumSet.of(BROKE, RUN_BACK);
            default -> none();
        };
    }

    private static Set<AttemptAct> reader(AttemptPhase phase) {
        return switch (phase.name()) {
            case CALLED -> EnumSet.of(FIRST_TURN, TAKE_SPARE);
            case WINDING -> EnumSet.of(LAST_TURN, BROKE, RUN_BACK);
            case HOLDING -> EnumSet.of(MORE_TURNS, SOME_OFF, BROKE, RUN_BACK);
            case BROKE -> afterBreak((AttemptPhase.Broke) phase);
            case RUN_BACK -> EnumSet.of(BROKE, RUN_BACK);
            default -> none();
        };
    }

    /** After a break whoever is nearest tells; a protest is against a flight. */
    private static Set<AttemptAct> timekeeper(AttemptPhase phase) {
        return switch (phase.name()) {
            case BROKE, RUN_BACK -> onTheMotor(phase);
            case CALLED, WINDING, HOLDING -> EnumSet.of(RELEASED);
            case IN_THE_AIR -> EnumSet.of(NOT_RELEASED, LANDED, TYPE_TIME);
            case LANDED -> EnumSet.of(STILL_FLYING, TYPE_TIME, PROTEST);
            case OFFICIAL -> EnumSet.of(SIGN, TYPE_TIME, PROTEST);
            case VOID -> EnumSet.of(PROTEST);
            default -> none();
        };
    }

    private static Set<AttemptAct> captain(AttemptPhase phase) {
        return switch (phase.name()) {
            case NEXT -> EnumSet.of(CALL);
            case CALLED -> EnumSet.of(FIRST_TURN, RELEASED, TAKE_SPARE, ABANDON);
            case WINDING -> EnumSet.of(LAST_TURN, RELEASED, BROKE, RUN_BACK, ABANDON);
            case HOLDING -> EnumSet.of(RELEASED, MORE_TURNS, SOME_OFF, BROKE, RUN_BACK, ABANDON);
            case BROKE -> brokeForCaptain((AttemptPhase.Broke) phase);
            case RUN_BACK -> EnumSet.of(BROKE, RUN_BACK);
            case IN_THE_AIR -> inTheAir((AttemptPhase.InTheAir) phase);
            case LANDED -> landed((AttemptPhase.Landed) phase);
            case OFFICIAL -> EnumSet.of(SIGN, TYPE_TIME, STEERED, REOPEN, PROTEST);
            case VOID -> EnumSet.of(REOPEN, PROTEST);
            case ABANDONED -> none();
        };
    }

    /** People first, then where it parted, then the spare: each is offered alone. */
    private static Set<AttemptAct> afterBreak(AttemptPhase.Broke broke) {
        if (!broke.peopleSafe()) {
            return EnumSet.of(PEOPLE_SAFE);
        }
        return EnumSet.of(broke.where() == null ? SAY_WHERE : TAKE_SPARE);
    }

    /** Giving up is always a way out, and comes after the people are safe; a mistake is taken back at any moment. */
    private static Set<AttemptAct> brokeForCaptain(AttemptPhase.Broke broke) {
        Set<AttemptAct> acts = afterBreak(broke);
        acts.add(NOT_BROKEN);
        if (broke.peopleSafe() && !broke.givenUp()) {
            acts.add(ABANDON);
        }
        return acts;
    }

    /** A motor breaks once; then it is asked where, and a mistake is taken back. */
    private static Set<AttemptAct> inTheAir(AttemptPhase.InTheAir flies) {
        Set<AttemptAct> acts =
                EnumSet.of(LANDED, NOT_RELEASED, BROKE, TYPE_TIME, JUDGE_WATCH, ANNOUNCE, COLLIDED, DECLARE_VOID);
        if (flies.motorBroke()) {
            acts.remove(BROKE);
            acts.addAll(EnumSet.of(NOT_BROKEN, SAY_WHERE));
        }
        acts.add(STEERED);
        acts.addAll(flies.caughtMs() == null ? EnumSet.of(CAUGHT) : EnumSet.of(FREE_AGAIN, STILL_HELD, START_AGAIN));
        return acts;
    }

    private static Set<AttemptAct> landed(AttemptPhase.Landed landed) {
        Set<AttemptAct> acts = EnumSet.of(
                CLOSE, STILL_FLYING, STEERED, TYPE_TIME, JUDGE_WATCH, ANNOUNCE, COLLIDED, PROTEST, DECLARE_VOID);
        if (landed.heldMs() != null) {
            acts.add(START_AGAIN);
        }
        return acts;
    }

    private static Set<AttemptAct> none() {
        return EnumSet.noneOf(AttemptAct.class);
    }
}

package org.skeinday.attempt;

import static org.skeinday.attempt.AttemptAct.*;

import java.util.EnumSet;
import java.util.Set;

/**
 * Who may do what in which phase. The hands rule: from the first crank turn to the release whoever winds, loads or releases
 * has no key; the first watch started is the release. From every phase that is not over there is a way on and a way out.
 */
public final class AttemptActs {
    private AttemptActs() {}

    /** @param hands of whoever asks; everybody who sees a key may also say stop, which needs no key */
    public static Set<AttemptAct> of(AttemptPhase phase, Hands hands) {
        return switch (hands) {
            case NONE -> EnumSet.noneOf(AttemptAct.class);
            case ON_THE_MOTOR -> onTheMotor(phase.name());
            case READER -> reader(phase);
            case TIMEKEEPER -> timekeeper(phase.name());
            case CAPTAIN -> captain(phase);
        };
    }

    /** Free hands before the first turn and after the landing only. */
    private static Set<AttemptAct> onTheMotor(AttemptPhase.Name phase) {
        return switch (phase) {
            case BROKE -> EnumSet.of(PEOPLE_SAFE);
            case RUN_BACK -> EnumSet.of(SAY_TURNS_ON);
            default -> EnumSet.noneOf(AttemptAct.class);
        };
    }

    private static Set<AttemptAct> reader(AttemptPhase phase) {
        return switch (phase.name()) {
            case CALLED -> EnumSet.of(FIRST_TURN);
            case WINDING -> EnumSet.of(LAST_TURN, BROKE);
            case HOLDING -> EnumSet.of(MORE_TURNS, SOME_OFF, RUN_BACK, BROKE);
            case BROKE -> afterBreak((AttemptPhase.Broke) phase);
            case RUN_BACK -> EnumSet.of(SAY_TURNS_ON);
            default -> EnumSet.noneOf(AttemptAct.class);
        };
    }

    private static Set<AttemptAct> timekeeper(AttemptPhase.Name phase) {
        return switch (phase) {
            case CALLED, WINDING, HOLDING -> EnumSet.of(RELEASED);
            case IN_THE_AIR -> EnumSet.of(LANDED, NOT_RELEASED);
            case LANDED -> EnumSet.of(STILL_FLYING, TYPE_WATCH);
            case OFFICIAL -> EnumSet.of(SIGN);
            default -> EnumSet.noneOf(AttemptAct.class);
        };
    }

    private static Set<AttemptAct> captain(AttemptPhase phase) {
        return switch (phase.name()) {
            case NEXT -> EnumSet.of(CALL, CHANGE_ASSIGNMENT);
            case CALLED -> EnumSet.of(FIRST_TURN, RELEASED, CHANGE_ASSIGNMENT, ABANDON, STOP_THE_HALL);
            case WINDING -> EnumSet.of(LAST_TURN, BROKE, RELEASED, ABANDON, STOP_THE_HALL);
            case HOLDING -> EnumSet.of(RELEASED, MORE_TURNS, SOME_OFF, RUN_BACK, BROKE, ABANDON, STOP_THE_HALL);
            case BROKE -> with(afterBreak((AttemptPhase.Broke) phase), ABANDON, STOP_THE_HALL);
            case RUN_BACK -> EnumSet.of(SAY_TURNS_ON);
            case IN_THE_AIR ->
                EnumSet.of(LANDED, NOT_RELEASED, TYPE_WATCH, JUDGE_WATCH, ANNOUNCE, DECLARE_VOID, STOP_THE_HALL);
            case LANDED ->
                EnumSet.of(CLOSE, STILL_FLYING, TYPE_WATCH, JUDGE_WATCH, ANNOUNCE, DECLARE_VOID, STOP_THE_HALL);
            case OFFICIAL -> EnumSet.of(SIGN, REOPEN, PROTEST, TYPE_WATCH);
            case VOID -> EnumSet.of(REOPEN);
            case ABANDONED -> EnumSet.noneOf(AttemptAct.class);
        };
    }

    /** People first; nothing else is offered before. */
    private static Set<AttemptAct> afterBreak(AttemptPhase.Broke broke) {
        if (!broke.peopleSafe()) {
            return EnumSet.of(PEOPLE_SAFE);
        }
        return broke.where() == null ? EnumSet.of(SAY_WHERE, TAKE_SPARE) : EnumSet.of(TAKE_SPARE);
    }

    /** Giving up is always a way out, and comes after the people are safe. */
    private static Set<AttemptAct> with(Set<AttemptAct> acts, AttemptAct abandon, AttemptAct stop) {
        EnumSet<AttemptAct> all = EnumSet.copyOf(acts);
        all.add(stop);
        if (!acts.contains(PEOPLE_SAFE)) {
            all.add(abandon);
        }
        return all;
    }
}

package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.State;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.FlightRules;

/** What the captain can do with the attempt on the card, as keys: one for each act of its phase that needs no more words. */
final class CardActs {
    private CardActs() {}

    /** The acts of the phase, for the captain. */
    static Set<AttemptAct> of(LiveAttempt live) {
        return AttemptActs.of(live);
    }

    /** The way on first. @param lacksCatch whether it was caught and no watch has marked it @param stopped whether the hall stands still */
    static List<NowView.Deed> deeds(
            LiveAttempt live,
            FlightRules rules,
            Optional<Collision> collision,
            boolean lacksCatch,
            boolean stopped,
            long nowMs) {
        Set<AttemptAct> acts = of(live);
        List<NowView.Deed> deeds = new ArrayList<>(keys(acts, live, stopped, AttemptAct::leadsOn));
        List<NowView.Deed> aloft = aloft(acts, rules, live.heldMs(nowMs));
        boolean held = acts.contains(AttemptAct.FREE_AGAIN); // then nothing is as urgent as what becomes of it
        if (held) {
            deeds.addAll(aloft);
        }
        deeds.addAll(keys(acts, live, stopped, act -> !act.leadsOn()));
        if (!held) {
            deeds.addAll(aloft);
        }
        if (lacksCatch && live.phase().name() == AttemptPhase.Name.LANDED) {
            deeds.add(new NowView.Deed(
                    "/attempt/aloft",
                    rules.letsStartAgain(live.heldMs(nowMs)) ? "No watch has it: fly again" : "No watch has it: void",
                    "no-watch"));
        }
        if (acts.contains(AttemptAct.COLLIDED)) {
            deeds.addAll(collision(rules, collision, nowMs));
        }
        return deeds;
    }

    private static List<NowView.Deed> keys(
            Set<AttemptAct> acts, LiveAttempt live, boolean stopped, Predicate<AttemptAct> which) {
        return acts.stream()
                .filter(act -> !stopped || !act.putsTurnsOn())
                .filter(which)
                .flatMap(act -> deed(act, live.day()).stream())
                .toList();
    }

    /** Empty for one that asks for more than a press, which stands in its own form. */
    private static Optional<NowView.Deed> deed(AttemptAct act, DayKind day) {
        return switch (act) {
            case FIRST_TURN -> move(act, State.WINDING);
            case LAST_TURN -> move(act, State.HOLDING);
            case RELEASED -> move(act, State.RELEASED);
            case LANDED -> move(act, State.LANDED);
            case BROKE -> Optional.of(new NowView.Deed("/attempt/broke", act.words(), "broke"));
            case MORE_TURNS -> Optional.of(new NowView.Deed("/attempt/more-turns", act.words(), "more-turns"));
            case NOT_BROKEN -> Optional.of(new NowView.Deed("/attempt/not-broken", act.words(), "not-broken"));
            case NOT_RELEASED, STILL_FLYING -> Optional.of(new NowView.Deed("/attempt/take-back", act.words(), "back"));
            case CLOSE -> Optional.of(new NowView.Deed("/attempt/close", act.words(day), ""));
            case CALL,
                    PEOPLE_SAFE,
                    SAY_WHERE,
                    TAKE_SPARE,
                    RUN_BACK,
                    CAUGHT,
                    FREE_AGAIN,
                    STILL_HELD,
                    STEERED,
                    START_AGAIN,
                    SOME_OFF,
                    TYPE_TIME,
                    JUDGE_WATCH,
                    ANNOUNCE,
                    COLLIDED,
                    SIGN,
                    REOPEN,
                    PROTEST,
                    ABANDON,
                    DECLARE_VOID -> Optional.empty();
        };
    }

    /** What held it is one press, since it is seen aloft; steering is asked for in its own form. */
    private static List<NowView.Deed> aloft(Set<AttemptAct> acts, FlightRules rules, @Nullable Long heldMs) {
        List<NowView.Deed> deeds = new ArrayList<>();
        if (acts.contains(AttemptAct.CAUGHT)) {
            deeds.add(new NowView.Deed("/attempt/aloft", "Caught by the building", "caught"));
            deeds.add(new NowView.Deed("/attempt/aloft", "Caught by somebody", "caught-by-person"));
        }
        if (acts.contains(AttemptAct.FREE_AGAIN)) {
            deeds.add(new NowView.Deed("/attempt/aloft", AttemptAct.FREE_AGAIN.words(), "free"));
        }
        if (acts.contains(AttemptAct.STILL_HELD)) {
            deeds.add(new NowView.Deed("/attempt/aloft", AttemptAct.STILL_HELD.words(), "still-held"));
        }
        if (acts.contains(AttemptAct.START_AGAIN) && rules.letsStartAgain(heldMs)) {
            deeds.add(new NowView.Deed("/attempt/aloft", AttemptAct.START_AGAIN.words(), "start-again"));
        }
        return deeds;
    }

    private static Optional<NowView.Deed> move(AttemptAct act, State to) {
        return Optional.of(new NowView.Deed("/attempt/move", act.words(), to.word()));
    }

    private static List<NowView.Deed> collision(FlightRules rules, Optional<Collision> collision, long nowMs) {
        if (collision.isEmpty()) {
            return rules.letsChoose()
                    ? List.of(new NowView.Deed("/attempt/collision", "Collided: the entry may choose", "told"))
                    : List.of();
        }
        return collision.get().holds(nowMs, rules).isPresent()
                ? List.of()
                : List.of(
                        new NowView.Deed("/attempt/collision", "It keeps its time", "keep"),
                        new NowView.Deed("/attempt/collision", "It flies again", "again"),
                        new NowView.Deed("/attempt/collision", "No collision after all", "none"));
    }

    /** Elsewhere our own watches are not reduced. */
    static List<Integer> judges(LiveAttempt live, int timekeepers) {
        return live.phase().name() == AttemptPhase.Name.LANDED && live.day() != DayKind.VISITING
                ? IntStream.rangeClosed(1, timekeepers).boxed().toList()
                : List.of();
    }

    static boolean announces(LiveAttempt live) {
        return live.day() == DayKind.VISITING && of(live).contains(AttemptAct.ANNOUNCE);
    }
}

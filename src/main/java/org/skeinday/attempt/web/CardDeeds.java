package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.State;
import org.skeinday.contest.FlightRules;

/** What can be done with the attempt on the card, in the state where it stands. */
final class CardDeeds {
    private CardDeeds() {}

    static List<NowView.Deed> of(
            State state, boolean visiting, FlightRules rules, Optional<Collision> collision, long nowMs) {
        List<NowView.Deed> deeds = new ArrayList<>(
                switch (state) {
                    case CALLED -> List.of(move("Start winding", State.WINDING), move("Released", State.RELEASED));
                    case WINDING -> List.of(move("Wound, holding", State.HOLDING));
                    case HOLDING -> List.of(move("Released", State.RELEASED));
                    case RELEASED -> List.of(move("Landed", State.LANDED));
                    case LANDED ->
                        List.of(new NowView.Deed(
                                "/attempt/close",
                                visiting ? "Count the announced time" : "Take the official time",
                                ""));
                    case PLANNED, CLOSED, SCRUBBED, VOID -> List.<NowView.Deed>of();
                });
        if (state == State.RELEASED || state == State.LANDED) {
            if (rules.letsChoose() && collision.isEmpty()) {
                deeds.add(new NowView.Deed("/attempt/collision", "Collided: the entry may choose", "told"));
            }
            if (collision.filter(c -> c.holds(nowMs, rules).isEmpty()).isPresent()) {
                deeds.add(new NowView.Deed("/attempt/collision", "It keeps its time", "keep"));
                deeds.add(new NowView.Deed("/attempt/collision", "It flies again", "again"));
                deeds.add(new NowView.Deed("/attempt/collision", "No collision after all", "none"));
            }
            deeds.add(new NowView.Deed(
                    "/attempt/take-back", state == State.RELEASED ? "Not released after all" : "Still flying", "back"));
        }
        return deeds;
    }

    private static NowView.Deed move(String word, State to) {
        return new NowView.Deed("/attempt/move", word, to.word());
    }
}

package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Where more than one winding place is prepared, an attempt is wound at one of them: chosen before its first crank turn. */
public final class ChooseStation {
    /** @param station id of the winding place */
    record Chosen(String attempt, String station) {}

    private ChooseStation() {}

    public static List<ActKind<?>> kinds() {
        return List.of(new ActKind<>("attempt.station", Chosen.class, ChooseStation::decide));
    }

    static Decision decide(Tx tx, ActContext context, Chosen chosen) {
        AttemptNow now = AttemptStore.find(tx, chosen.attempt()).orElse(null);
        StationAdded to = StationStore.all(tx).stream()
                .filter(s -> s.id().equals(chosen.station()))
                .findFirst()
                .orElse(null);
        if (now == null || to == null) {
            return Decision.unknown("There is no such attempt or winding place; look again");
        }
        if (now.state() != State.CALLED) {
            return Decision.refused(
                    PhaseGate.wrong(tx, context, now, "The winding place is chosen before the first crank turn"));
        }
        List<Fact> facts = new ArrayList<>(stays(now.id(), Optional.of(to)));
        if (at(tx, now).filter(s -> s.id().equals(to.id())).isPresent()) {
            return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
        }
        facts.addAll(AsksAgain.beforeWinding(tx, context, now.id(), AsksAgain.OTHER_PLACE));
        Optional.ofNullable(now.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .ifPresent(m -> facts.addAll(PlaceReopens.byMotor(tx, context, now.eventId(), m, Optional.of(to))));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    /** From the call on the place stays, whatever becomes free: crank turns that nobody read are of its winder. */
    public static List<Fact> stays(String attempt, Optional<StationAdded> station) {
        return station.map(at -> Fact.of("attempt.station", AttemptStation.of(attempt, at))).stream()
                .toList();
    }

    static List<Fact> stays(Tx tx, AttemptNow now) {
        return stays(now.id(), at(tx, now));
    }

    private static Optional<StationAdded> at(Tx tx, AttemptNow now) {
        return AttemptsWoundAt.of(tx, now);
    }
}

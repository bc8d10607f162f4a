package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;

/** Which motors an entry may fly with now, on the page Now and on the printed card alike. */
public final class MotorsAtHand {
    private final Tx tx;
    private final List<MotorAdded> motors;
    private final Map<String, Integer> windings;

    /** Reads the motors once, for every entry that is asked about. */
    public MotorsAtHand(Tx tx) {
        this.tx = tx;
        this.motors = MotorLifeStore.all(tx).stream()
                .filter(life -> life.whyNotFlown().isEmpty() && life.stage() != MotorStage.RETIRED)
                .map(MotorLife::motor)
                .toList();
        this.windings = AttemptStore.windings(tx);
    }

    /**
     * Those that it has declared, else the team's, that can be flown (not handed in, gritty, broken, lost or retired)
     * and turn the right way; fewest windings first, so that none is worn out while others lie fresh.
     */
    public List<MotorAdded> of(EntryAdded entry, List<ModelAdded> models) {
        List<String> declared = EntryStore.motorsOf(tx, entry.id());
        return motors.stream()
                .filter(motor -> motor.team().equals(entry.team()))
                .filter(motor -> declared.isEmpty() || declared.contains(motor.id()))
                .filter(motor -> models.isEmpty()
                        || models.stream().anyMatch(m -> m.direction().equals(motor.direction())))
                .sorted(Comparator.comparingInt(
                                (MotorAdded motor) -> motor.uses() + windings.getOrDefault(motor.id(), 0))
                        .thenComparing(MotorAdded::tag))
                .toList();
    }
}

package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.units.Torque;
import org.skeinday.winding.CrankTurns;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.store.WindStore;

/** After the wind: its turns, and readings that are left out. */
public final class CountWind {
    private CountWind() {}

    /**
     * Crank turns as typed or stepped to; full stretch may stay empty.
     *
     * @param held what was read while it was held, as {@link HeldRead} reads it; null where nothing was asked of it
     * @param unit of torques without one
     */
    public record Turns(
            String wind,
            String atFull,
            String stop,
            String backOff,
            @Nullable String held,
            @Nullable String unit) {}

    /** A doubtful reading: left out, it counts no more and stays in the record; confirmed, nobody asks again. */
    public record LeaveOut(String mark) {}

    static Decision decide(Tx tx, ActContext context, Turns turns) {
        Wind wind = WindStore.find(tx, turns.wind()).orElse(null);
        if (wind == null) {
            return Decision.unknown("There is no such wind; look again");
        }
        var form = new TypedFields();
        @Nullable Integer stop = form.read("stop", turns.stop(), CrankTurns::atStop);
        @Nullable Integer atFull = form.read("atFull", turns.atFull(), CrankTurns::whole);
        @Nullable Double backOff = form.read("backOff", turns.backOff(), CrankTurns::part);
        @Nullable
        List<HeldRead> held = form.read(
                "held",
                turns.held() == null ? "" : turns.held(),
                typed -> HeldRead.parse(
                        typed,
                        turns.unit() == null ? "" : turns.unit(),
                        wind.begun().divisionNmm()));
        Optional<Decision> refused = form.refused();
        if (stop == null || refused.isPresent()) {
            return refused.orElseThrow();
        }
        try {
            var counted = new WindCounted(wind.begun().id(), atFull, stop, backOff, wind.paced());
            List<Fact> facts = new ArrayList<>(facts(tx, wind.with(counted), counted));
            if (turns.held() != null && held != null && !held.equals(wind.held())) {
                facts.add(Fact.of("wind.held", new WindHeld(wind.begun().id(), held)));
            }
            return new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
        } catch (IllegalArgumentException e) {
            return Decision.refused("stop", String.valueOf(e.getMessage()));
        }
    }

    private static List<Fact> facts(Tx tx, Wind wind, WindCounted counted) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("wind.counted", counted)));
        String attempt = wind.begun().attemptId();
        if (wind.broke().isPresent()) {
            BrokenMotor.counted(tx, wind).ifPresent(facts::add); // the attempt goes on, with another motor
        } else if (attempt != null) {
            Optional<Torque> launch = wind.launchTorque();
            facts.add(Fact.of(
                    "attempt.wound",
                    new AttemptWound(
                            attempt,
                            counted.stopCrankTurns(),
                            launch.map(Torque::newtonMillimetres).orElse(null),
                            launch.map(BrokenMotor::typed).orElse(null))));
            Optional<Torque> peak = wind.peakTorque();
            facts.add(Fact.of(
                    "attempt.noted",
                    AttemptStore.note(tx, attempt)
                            .wound(
                                    peak.map(Torque::newtonMillimetres).orElse(null),
                                    peak.map(BrokenMotor::typed).orElse(null),
                                    counted.backOffCrankTurns())));
        }
        return facts;
    }

    static Decision leaveOut(Tx tx, ActContext context, LeaveOut leave) {
        WindMark mark = WindStore.mark(tx, leave.mark()).orElse(null);
        if (mark == null) {
            return Decision.unknown("There is no such reading; look again");
        }
        return Decision.decided(WindActions.TOPICS, Fact.of("wind.mark", mark.omitted()));
    }

    /** It was so: nobody is asked about this reading again. */
    static Decision confirm(Tx tx, ActContext context, LeaveOut was) {
        return WindStore.mark(tx, was.mark())
                .map(mark -> Decision.decided(
                        WindActions.TOPICS, Fact.of("wind.confirmed", new WindConfirmed(mark.id(), mark.windId()))))
                .orElseGet(() -> Decision.unknown("There is no such reading; look again"));
    }
}

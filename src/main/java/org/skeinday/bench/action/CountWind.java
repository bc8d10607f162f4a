package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.action.CameFrom;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.units.Torque;
import org.skeinday.winding.CrankTurns;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.store.KnownBounds;
import org.skeinday.winding.store.WindStore;

/** After the wind: its turns, and what was typed of its hold. */
public final class CountWind {
    private CountWind() {}

    /**
     * Crank turns as typed or stepped to; full stretch may stay empty.
     *
     * @param held what was read while it was held, as {@link HeldRead} reads it; null where nothing was asked of it
     * @param unit of torques without one
     * @param offered fields that stand as the form proposed them, parted by spaces; null or empty for none
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them
     */
    public record Turns(
            String wind,
            String atFull,
            String stop,
            String backOff,
            @Nullable String held,
            @Nullable String unit,
            @Nullable String offered,
            @Nullable String insist) {
        List<String> proposed() {
            return offered == null ? List.of() : List.of(offered.split(" ", -1));
        }
    }

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
            List<Doubted> doubts = new ArrayList<>(doubts(tx, wind, wind.with(counted)));
            doubts.addAll(HeldDoubts.asked(wind, held == null ? List.of() : held, wind.held()));
            Optional<Decision> asked = AskedOnce.about(doubts, turns.insist(), CountWind::field);
            if (asked.isPresent()) {
                return asked.get();
            }
            List<Fact> facts = new ArrayList<>(facts(tx, context, wind.with(counted), counted));
            facts.addAll(OfferedCounts.marks(tx, context, wind, wind.with(counted), turns.proposed()));
            facts.addAll(AboveBand.marks(tx, context, wind.with(counted), Set.of()));
            if (turns.held() != null && held != null && !held.equals(wind.held())) {
                facts.add(Fact.of("wind.held", new WindHeld(wind.begun().id(), held)));
            }
            return new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
        } catch (IllegalArgumentException e) {
            return Decision.refused("stop", String.valueOf(e.getMessage()));
        }
    }

    /** What its turns make doubtful: of a flight all of it but the torques, which nobody types here; else of the wind alone. */
    private static List<Doubted> doubts(Tx tx, Wind before, Wind told) {
        Optional<Flight> flight = told.broke().isPresent()
                ? Optional.empty()
                : Optional.ofNullable(told.begun().attemptId()).flatMap(id -> FlownStore.find(tx, id));
        List<Doubted> doubts = flight.map(f -> AskedOnce.doubts(tx, counted(f, told.counted()), f))
                .orElseGet(() -> {
                    Double breaking =
                            new KnownBounds(tx).breakingTurns(told.begun().motorId());
                    return Objects.equals(before.counted(), told.counted())
                            ? List.of()
                            : told.turns().told(breaking).doubts();
                });
        return doubts.stream()
                .filter(d -> d.about() != Measured.PEAK_TORQUE && d.about() != Measured.LAUNCH_TORQUE)
                .toList();
    }

    private static Flight counted(Flight flight, @Nullable WindCounted turns) {
        return turns == null
                ? flight
                : flight.with(Measured.CRANK_TURNS, (double) turns.stopCrankTurns())
                        .with(Measured.BACK_OFF, turns.backOffCrankTurns());
    }

    /** Of torques the form has those of the hold alone. */
    private static String field(Measured what) {
        return switch (what) {
            case BACK_OFF -> "backOff";
            case PEAK_TORQUE -> "held";
            default -> "stop";
        };
    }

    private static List<Fact> facts(Tx tx, ActContext context, Wind wind, WindCounted counted) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("wind.counted", counted)));
        if (wind.broke().isPresent()) {
            BrokenMotor.counted(tx, wind).ifPresent(facts::add); // the attempt goes on, with another motor
        } else {
            facts.addAll(ofAttempt(tx, context, wind, counted));
        }
        return facts;
    }

    /** What the wind came to for its attempt: its torques are those that the reader tapped. */
    private static List<Fact> ofAttempt(Tx tx, ActContext context, Wind wind, WindCounted counted) {
        List<Fact> facts = new ArrayList<>();
        String attempt = wind.begun().attemptId();
        if (attempt != null) {
            Optional<Torque> launch = wind.launchTorque();
            facts.add(Fact.of(
                    "attempt.wound",
                    new AttemptWound(
                            attempt,
                            counted.stopCrankTurns(),
                            launch.map(Torque::newtonMillimetres).orElse(null),
                            launch.map(BrokenMotor::typed).orElse(null))));
            Optional<Torque> peak = wind.peakTorque();
            AttemptNoted before = AttemptStore.note(tx, attempt);
            facts.add(Fact.of(
                    "attempt.noted",
                    before.wound(
                            peak.map(Torque::newtonMillimetres).orElse(null),
                            peak.map(BrokenMotor::typed).orElse(null),
                            counted.backOffCrankTurns())));
            // what is as it was keeps what was said of it
            launch.filter(torque -> isNew(AttemptStore.wound(tx, attempt).map(AttemptWound::launchTorqueNmm), torque))
                    .ifPresent(torque -> facts.add(tapped(context, attempt, Measured.LAUNCH_TORQUE, torque)));
            peak.filter(torque -> isNew(Optional.ofNullable(before.peakTorqueNmm()), torque))
                    .ifPresent(torque -> facts.add(tapped(context, attempt, Measured.PEAK_TORQUE, torque)));
        }
        return facts;
    }

    private static boolean isNew(Optional<Double> before, Torque torque) {
        return before.filter(nmm -> nmm == torque.newtonMillimetres()).isEmpty();
    }

    private static Fact tapped(ActContext context, String attempt, Measured what, Torque torque) {
        return CameFrom.mark(context, attempt, what, torque.newtonMillimetres(), Source.TAP);
    }
}

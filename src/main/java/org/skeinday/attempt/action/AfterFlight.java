package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.Contacts;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.winding.CrankTurns;

/** What is told once a flight is over: the wind that nobody read, the turns left, whether the flight says something. */
public final class AfterFlight {
    private static final Set<String> TOPICS = Set.of("attempts", "winds", "motors");

    private AfterFlight() {}

    /**
     * A wind that nobody read, in three numbers, and the back-off where it was counted. As typed.
     *
     * @param unit of torques that were typed without one
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them
     */
    public record Alone(
            String attempt,
            String stop,
            String backOff,
            String peak,
            String launch,
            String unit,
            @Nullable String insist) {}

    /**
     * After the landing, as typed.
     *
     * @param remaining crank turns until the needle rests at zero
     * @param spoilt why the flight says nothing of model and motor; empty when it does
     * @param contact time from release to the contact, empty when nobody saw when
     * @param seen how the form showed the flight to be judged, as {@link FlightWorth#seen} says it; null where it did not
     * @param counts yes or later, where the form asks whether a flight with a contact counts; null where it does not
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them
     */
    public record Landed(
            String attempt,
            String remaining,
            String spoilt,
            String contact,
            @Nullable String seen,
            @Nullable String counts,
            @Nullable String insist) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("wind.unread", Alone.class, AfterFlight::alone),
                new ActKind<>("flight.told", Landed.class, AfterFlight::landed));
    }

    static Decision alone(Tx tx, ActContext context, Alone alone) {
        AttemptNow now = AttemptStore.find(tx, alone.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (now.state().isBeforeRelease() || now.state() == State.PLANNED) {
            return Decision.refused(
                    "stop", PhaseGate.wrong(tx, context, now, "The three numbers are told after the release"));
        }
        var form = new TypedFields();
        @Nullable Integer stop = form.read("stop", alone.stop(), CrankTurns::atStop);
        @Nullable Double backOff = form.read("backOff", alone.backOff(), CrankTurns::part);
        AttemptNoted before = AttemptStore.note(tx, now.id());
        @Nullable TypedTorque keptPeak = TypedTorque.kept(before.peakTorqueNmm(), before.peakTorqueTyped());
        @Nullable
        TypedTorque keptLaunch = AttemptStore.wound(tx, now.id())
                .map(w -> TypedTorque.kept(w.launchTorqueNmm(), w.launchTorqueTyped()))
                .orElse(null);
        @Nullable
        TypedTorque peak = form.read("peak", alone.peak(), text -> TypedTorque.read(text, alone.unit(), keptPeak));
        @Nullable
        TypedTorque launch =
                form.read("launch", alone.launch(), text -> TypedTorque.read(text, alone.unit(), keptLaunch));
        Optional<Decision> refused = form.refused();
        if (stop == null || refused.isPresent()) {
            return refused.orElseThrow();
        }
        Optional<Flight> flight = FlownStore.find(tx, now.id());
        Optional<Flight> after = flight.map(flown -> flown.with(Measured.CRANK_TURNS, stop.doubleValue())
                .with(Measured.BACK_OFF, backOff)
                .with(Measured.PEAK_TORQUE, peak == null ? null : peak.nmm())
                .with(Measured.LAUNCH_TORQUE, launch == null ? null : launch.nmm()));
        Optional<Decision> asked = after.flatMap(
                told -> AskedOnce.about(tx, told, flight.orElseThrow(), alone.insist(), AfterFlight::fieldOfWind));
        if (asked.isPresent()) {
            return asked.get();
        }
        var wound = new AttemptWound(
                now.id(), stop, launch == null ? null : launch.nmm(), launch == null ? null : launch.typed());
        AttemptNoted noted =
                before.wound(peak == null ? null : peak.nmm(), peak == null ? null : peak.typed(), backOff);
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("attempt.wound", wound), Fact.of("attempt.noted", noted)));
        after.ifPresent(told -> facts.addAll(CameFrom.changed(context, flight.orElseThrow(), told, Source.TYPED)));
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    static Decision landed(Tx tx, ActContext context, Landed told) {
        AttemptNow now = AttemptStore.find(tx, told.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (now.state() != State.LANDED && now.state() != State.CLOSED && now.state() != State.VOID) {
            return Decision.refused("remaining", PhaseGate.wrong(tx, context, now, "Turns are left after a landing"));
        }
        Flight flight = FlownStore.find(tx, now.id()).orElseThrow();
        Optional<Decision> changed = FlightWorth.saidMeanwhile(flight, told.seen());
        if (changed.isPresent()) {
            return changed.get();
        }
        var form = new TypedFields();
        @Nullable Double remaining = form.read("remaining", told.remaining(), CrankTurns::part);
        @Nullable Long contact = FlightWorth.contact(form, told.contact());
        String spoilt = FlightWorth.reason(form, "spoilt", told.spoilt());
        if (spoilt.isEmpty() && contact != null) {
            form.wrong("spoilt", "Say what it touched: a time alone says nothing");
        }
        return form.refused()
                .or(() -> AskedOnce.about(
                        tx, flight.with(Measured.REMAINING, remaining), flight, told.insist(), what -> "remaining"))
                .orElseGet(() -> {
                    List<Fact> facts = new ArrayList<>(judged(tx, context, flight, told, spoilt, contact));
                    facts.addAll(typed(context, flight, remaining));
                    return told(tx, context, now, remaining, facts);
                });
    }

    /** A flight with a contact stays undecided as long as nobody says; whoever notes turns alone has said nothing of it. */
    private static List<Fact> judged(
            Tx tx, ActContext context, Flight flight, Landed told, String spoilt, @Nullable Long contact) {
        boolean open = flight.counts().isUndecided() && spoilt.isEmpty() && !"yes".equals(told.counts());
        return open || !FlightWorth.saysMore(flight, spoilt, contact)
                ? List.of()
                : FlightWorth.judged(tx, context, flight, spoilt, contact);
    }

    private static String fieldOfWind(Measured what) {
        return switch (what) {
            case BACK_OFF -> "backOff";
            case PEAK_TORQUE -> "peak";
            case LAUNCH_TORQUE -> "launch";
            case CRANK_TURNS, AT_FULL, REMAINING, TIME, FLIGHT -> "stop";
        };
    }

    /**
     * The turns left alone, as a list asks for them: what was judged of the flight stays. Empty before the landing: then
     * they are told again on the page Winding.
     *
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     */
    static Optional<Decision> remaining(
            Tx tx, ActContext context, AttemptNow now, String typed, @Nullable String insist) {
        if (now.state() != State.LANDED && now.state() != State.CLOSED) {
            return Optional.empty();
        }
        double left = Double.parseDouble(typed);
        Flight flight = FlownStore.find(tx, now.id()).orElseThrow();
        Optional<Decision> asked =
                AskedOnce.about(tx, flight.with(Measured.REMAINING, left), flight, insist, what -> "answer");
        if (asked.isPresent()) {
            return asked;
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of("attempt.noted", AttemptStore.note(tx, now.id()).left(left)));
        facts.addAll(typed(context, flight, left));
        runBack(tx, context, now, left).ifPresent(facts::add);
        return Optional.of(new Decision.Decided(facts, Map.of(), TOPICS));
    }

    /**
     * How often the model touched something, as a list asks for it. Words that were written of it stay: they say more than
     * a number.
     */
    static Optional<Decision> contacts(Tx tx, AttemptNow now, String typed) {
        AttemptNoted noted = AttemptStore.note(tx, now.id());
        String before = noted.contacts() == null ? "" : noted.contacts();
        if (!before.isEmpty() && Contacts.parse(before).isEmpty()) {
            return Optional.empty();
        }
        String words = new Contacts(Integer.parseInt(typed.strip())).words();
        return Optional.of(
                new Decision.Decided(List.of(Fact.of("attempt.noted", noted.touched(words))), Map.of(), TOPICS));
    }

    private static List<Fact> typed(ActContext context, Flight flight, @Nullable Double remaining) {
        return CameFrom.changed(context, flight, flight.with(Measured.REMAINING, remaining), Source.TYPED);
    }

    /** Turns left are counted by running the motor back: it is then run back, and nobody has to say so again. */
    private static Decision told(
            Tx tx, ActContext context, AttemptNow now, @Nullable Double remaining, List<Fact> said) {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of("attempt.noted", AttemptStore.note(tx, now.id()).left(remaining)));
        facts.addAll(said);
        runBack(tx, context, now, remaining).ifPresent(facts::add);
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    private static Optional<Fact> runBack(Tx tx, ActContext context, AttemptNow now, @Nullable Double remaining) {
        return remaining != null && now.motorId() != null && isFlown(tx, now)
                ? MotorGoes.step(
                        tx,
                        context,
                        now.motorId(),
                        MotorDeed.UNWIND,
                        context.now().toEpochMilli())
                : Optional.empty();
    }

    /** By the releases, where both are known; else by the numbers of one entry's attempts. */
    private static boolean isLater(AttemptNow one, AttemptNow than) {
        Long released = one.releasedAtMs();
        Long before = than.releasedAtMs();
        return released != null && before != null
                ? released > before
                : one.entryId().equals(than.entryId())
                        && one.number().running() > than.number().running();
    }

    /** Flown in this attempt and in none after it: what is told of an old one does not run its motor back now. */
    private static boolean isFlown(Tx tx, AttemptNow now) {
        String motor = String.valueOf(now.motorId());
        boolean since = AttemptStore.ofEvent(tx, now.eventId()).stream()
                .filter(a -> motor.equals(a.motorId()) && a.state() != State.SCRUBBED)
                .anyMatch(a -> isLater(a, now));
        return !since
                && MotorLifeStore.find(tx, motor)
                        .filter(life -> life.stage() == MotorStage.FLOWN)
                        .isPresent();
    }
}

package org.skeinday.attempt.store;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aim;
import org.skeinday.attempt.AttemptAimed;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.MotorUses;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.Ceiling;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.Section;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;
import org.skeinday.winding.Level;
import org.skeinday.winding.store.BreakEvidenceStore;

/** What winds are to end at: typed, else from the batch's break tests on the meter that is read. */
public final class Aims {
    private Aims() {}

    /**
     * How this motor is to be wound for an entry.
     *
     * @param attempt null before the entry is called
     * @param uses that the motor has had
     */
    public static MotorPlan plan(
            Tx tx, EntryAdded entry, @Nullable String attempt, MotorAdded motor, @Nullable ModelAdded model, int uses) {
        return at(tx, entry, attempt, number(tx, entry, attempt), motor, model, uses, Stations.of(tx, entry, attempt));
    }

    /** The same for an attempt that is still to be called, next or later: whoever winds that one. */
    public static MotorPlan planAhead(
            Tx tx, EntryAdded entry, AttemptNumber number, MotorAdded motor, @Nullable ModelAdded model, int uses) {
        return at(tx, entry, null, number, motor, model, uses, Stations.of(tx, entry, null));
    }

    private static MotorPlan at(
            Tx tx,
            EntryAdded entry,
            @Nullable String attempt,
            AttemptNumber number,
            MotorAdded motor,
            @Nullable ModelAdded model,
            int uses,
            Optional<StationAdded> station) {
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        return MotorPlan.of(
                event,
                Stations.ratio(station, event),
                motor,
                BatchStore.find(tx, motor.batchId()).orElse(null),
                model,
                uses,
                of(tx, entry, attempt, number, motor, station));
    }

    /** The same by the uses on record: from the call to the release its plan stands, whatever its own wind adds. */
    public static MotorPlan plan(
            Tx tx, EntryAdded entry, @Nullable String attempt, MotorAdded motor, @Nullable ModelAdded model) {
        return plan(tx, entry, attempt, motor, model, uses(tx, attempt, motor));
    }

    /** The same at a winding place that is known. */
    public static MotorPlan planAt(
            Tx tx,
            EntryAdded entry,
            String attempt,
            MotorAdded motor,
            @Nullable ModelAdded model,
            Optional<StationAdded> station) {
        return at(tx, entry, attempt, number(tx, entry, attempt), motor, model, uses(tx, attempt, motor), station);
    }

    private static int uses(Tx tx, @Nullable String attempt, MotorAdded motor) {
        MotorUses all = MotorUseStore.all(tx);
        return attempt == null ? all.of(motor.id()) : all.before(motor.id(), attempt);
    }

    private static Aim of(
            Tx tx,
            EntryAdded entry,
            @Nullable String attempt,
            AttemptNumber number,
            MotorAdded motor,
            Optional<StationAdded> station) {
        String meter = station.map(StationAdded::meter).orElse("");
        AttemptAimed wanted = attempt == null
                ? AttemptStore.lastAim(tx, entry.id()).orElse(AttemptAimed.nothing(""))
                : AttemptStore.aim(tx, attempt);
        Level level = level(tx, entry, number);
        Double typed = wanted.ceilingNmm();
        Ceiling ceiling = typed == null
                ? fromBreakTests(tx, motor, meter, level)
                : Ceiling.typed(Torque.ofNewtonMillimetres(typed));
        Double launch = wanted.launchNmm();
        return new Aim(ceiling, launch == null ? null : Torque.ofNewtonMillimetres(launch), level);
    }

    private static AttemptNumber number(Tx tx, EntryAdded entry, @Nullable String attempt) {
        return attempt == null
                ? AttemptNumbers.next(tx, entry)
                : AttemptStore.find(tx, attempt).orElseThrow().number();
    }

    /** Of the one who winds this attempt; who winds to the full ceiling is practised, and where nobody counts, so are all. */
    public static Level level(Tx tx, EntryAdded entry, AttemptNumber number) {
        Optional<String> winder = Assignments.named(tx, entry, number, "winds")
                .map(assigned -> assigned.people().get(0));
        Optional<Integer> clean = winder.flatMap(id -> CrewStore.ofEvent(tx, entry.eventId()).stream()
                .filter(c -> c.personId().equals(id))
                .flatMap(c -> Optional.ofNullable(c.cleanWinds()).stream())
                .findFirst());
        return clean.filter(n -> n < CrewAdded.TO_FULL_CEILING).isPresent() ? Level.FIRST_HANDLING : Level.PRACTISED;
    }

    private static Ceiling fromBreakTests(Tx tx, MotorAdded motor, String meter, Level level) {
        Section section = Section.of(Mass.ofGrams(motor.massG()), Length.ofMillimetres(motor.loopMm()));
        return Ceiling.fromBreakTests(
                BreakEvidenceStore.tests(tx, motor.batchId(), meter), meter, section, level.ceilingShare());
    }
}

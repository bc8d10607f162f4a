package org.skeinday.review.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.JudgedReadings;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.StepTimes;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.store.OwnReadings;
import org.skeinday.attempt.store.StepsStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.dayplan.EventChains;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.hall.AirMeasured;
import org.skeinday.hall.store.HallStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.Conditions;
import org.skeinday.review.FlightContext;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Named;
import org.skeinday.review.StepTime;
import org.skeinday.review.Wound;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.store.WindStore;

/** Everything that rows are made of, read once. A value that cannot be is as good as one that was not noted. */
final class FlightRowReader {
    private static final String WINDS = "winds";
    private static final double MOST_SECONDS = 86_400;

    private final ZoneId zone;
    private final Map<String, String> people;
    private final MotorNames motors;
    private final Map<String, EventAdded> events;
    private final Map<String, EntryAdded> entries;
    private final Map<String, Named> models;
    private final Map<String, AttemptImported> attempts;
    private final Map<String, AttemptNumber> numbers;
    private final Map<String, PracticeFlown> practised;
    private final Map<String, AttemptNoted> notes;
    private final Map<String, StepTimes> steps;
    private final Map<String, List<ReadingTaken>> readings;
    private final Map<String, List<WatchJudged>> judged;
    private final Map<String, String> winders;

    /** By entry, for attempts whose record does not keep who wound. */
    private final Map<String, String> usualWinders = new HashMap<>();

    private final Map<String, WindBegun> winds = new HashMap<>();
    private final Map<String, Long> planned = new HashMap<>();
    private final MotorUses uses;
    private final List<AirMeasured> air;
    private final Map<String, List<AirMeasured>> airOf;

    FlightRowReader(Tx tx, ZoneId zone, Map<String, String> people) {
        this.zone = zone;
        this.people = people;
        this.motors = MotorNames.read(tx);
        this.uses = MotorUseStore.all(tx);
        this.air = HallStore.air(tx, 0, Long.MAX_VALUE);
        this.airOf = air.stream().collect(Collectors.groupingBy(a -> a.hall().toLowerCase(Locale.ROOT)));
        this.events = by(EventStore.all(tx), EventAdded::id);
        this.entries = by(EntryStore.all(tx), EntryAdded::id);
        this.models = by(
                ModelStore.all(tx).stream()
                        .map(m -> new Named(m.id(), m.name()))
                        .toList(),
                Named::id);
        this.attempts = by(AttemptStore.asImported(tx), AttemptImported::id);
        this.numbers = AttemptNumbers.all(tx);
        this.practised = by(FlightStore.all(tx), PracticeFlown::id);
        this.notes = by(AttemptStore.notes(tx), AttemptNoted::attemptId);
        this.steps = by(StepsStore.ofOwn(tx), StepTimes::attempt);
        this.readings = OwnReadings.standing(tx);
        this.judged = OwnReadings.judged(tx);
        this.winders = Assignments.kept(tx, WINDS);
        EntryStore.tasks(tx).stream()
                .filter(t -> t.task().equals(WINDS))
                .forEach(t -> usualWinders.put(t.entryId(), t.personId()));
        WindStore.begun(tx).stream()
                .filter(w -> w.attemptId() != null)
                .forEach(w -> winds.put(w.attemptId() + " " + w.motorId(), w));
        PlanStore.planned(tx).forEach(p -> planned.put(p.eventId() + " " + p.task() + " " + p.nth(), p.seconds()));
    }

    private static <T> Map<String, T> by(List<T> all, Function<T, String> id) {
        return all.stream().collect(Collectors.toMap(id, Function.identity()));
    }

    FlightRow row(Flight flight) {
        AttemptImported attempt = attempts.get(flight.id());
        PracticeFlown practice = practised.get(flight.id());
        String eventId = attempt != null ? attempt.eventId() : practice == null ? "" : practice.eventId();
        @Nullable EventAdded event = events.get(eventId);
        return new FlightRow(
                flight,
                day(flight, event),
                flown(flight, event, attempt),
                wound(flight, practice),
                conditions(flight, event),
                attempt == null ? List.of() : watches(attempt),
                attempt == null ? List.of() : steps(attempt));
    }

    /** Of the event's hall where it is named and was measured, else of whatever was. */
    private Conditions conditions(Flight flight, @Nullable EventAdded event) {
        @Nullable String hall = event == null ? null : event.hall();
        List<AirMeasured> measured = hall == null ? air : airOf.getOrDefault(hall.toLowerCase(Locale.ROOT), air);
        return new Conditions(
                AirMeasured.celsiusNear(measured, flight.atMs()),
                AirMeasured.humidityNear(measured, flight.atMs()),
                null);
    }

    /** Of an attempt that came without times, the day of its event. */
    private LocalDate day(Flight flight, @Nullable EventAdded event) {
        return flight.atMs() == 0 && event != null
                ? LocalDate.parse(event.day())
                : LocalDate.ofInstant(Instant.ofEpochMilli(flight.atMs()), zone);
    }

    private FlightContext flown(Flight flight, @Nullable EventAdded event, @Nullable AttemptImported attempt) {
        @Nullable EntryAdded entry = attempt == null ? null : entries.get(attempt.entryId());
        @Nullable String winder = entry == null ? null : winder(flight, entry);
        String motor = String.valueOf(flight.motorId());
        return new FlightContext(
                event == null ? null : new Named(event.id(), event.name()),
                entry == null ? null : new Named(entry.id(), entry.name()),
                models.get(String.valueOf(flight.modelId())),
                motors.motor(motor),
                motors.batch(motor),
                winder == null || winder.isEmpty() ? null : new Named(winder, people.getOrDefault(winder, "someone")));
    }

    private @Nullable String winder(Flight flight, EntryAdded entry) {
        @Nullable String then = winders.get(flight.id());
        return then == null ? usualWinders.get(entry.id()) : then;
    }

    private Wound wound(Flight flight, @Nullable PracticeFlown practice) {
        String id = String.valueOf(flight.motorId());
        @Nullable MotorAdded motor = motors.added(id);
        @Nullable WindBegun wind = winds.get(flight.id() + " " + id);
        @Nullable AttemptNoted note = notes.get(flight.id());
        return new Wound(
                wind == null ? null : wind.meter(),
                motor == null ? null : use(motor, flight),
                fraction(flight, id),
                within(
                        practice != null ? practice.stopTorqueNmm() : note == null ? null : note.peakTorqueNmm(),
                        0,
                        10_000),
                hold(flight.id()),
                motor == null ? null : (Double) motor.loopMm(),
                motor == null ? null : (Double) motor.massG());
    }

    private @Nullable Integer use(MotorAdded motor, Flight flight) {
        int use = uses.number(motor.id(), flight.id());
        return use > 100 ? null : (Integer) use;
    }

    private @Nullable Double fraction(Flight flight, String motor) {
        @Nullable Double breaking = motors.breakingTurns(motor);
        @Nullable Double stop = flight.stopCrankTurns();
        return breaking == null || stop == null ? null : within(stop * flight.ratio() / breaking, Double.MIN_VALUE, 2);
    }

    private @Nullable Double hold(String attempt) {
        @Nullable StepTimes at = steps.get(attempt);
        @Nullable Long from = at == null ? null : at.holdingAtMs();
        @Nullable Long to = at == null ? null : at.releasedAtMs();
        return from == null || to == null ? null : within((to - from) / 1000.0, 0, MOST_SECONDS);
    }

    private static @Nullable Double within(@Nullable Double value, double least, double most) {
        return value == null || !(value >= least && value <= most) ? null : value;
    }

    /** Those that its time rests on. */
    private List<Long> watches(AttemptImported of) {
        String attempt = of.id();
        var timed = new Timed(
                LateReadings.without(readings.getOrDefault(attempt, List.of()), of.state(), of.closedAtMs()),
                judged.getOrDefault(attempt, List.of()),
                new Marks(List.of()));
        return Readings.thatCount(timed).stream()
                .filter(r -> !JudgedReadings.isAside(r, timed))
                .map(ReadingTaken::durationMs)
                .toList();
    }

    /** A plan speaks of the rules' attempts, and is made for the try that comes next then. */
    private @Nullable Long planned(AttemptImported attempt, EntryAdded entry, Part part) {
        AttemptNumber number = Objects.requireNonNull(numbers.get(attempt.id()));
        String task = EventChains.task(entry.name(), number.rule(), part);
        return planned.get(attempt.eventId() + " " + task + " " + number.nth());
    }

    private List<StepTime> steps(AttemptImported attempt) {
        @Nullable EntryAdded entry = entries.get(attempt.entryId());
        @Nullable StepTimes at = steps.get(attempt.id());
        List<StepTime> times = new ArrayList<>();
        for (Part part : Part.values()) {
            OptionalLong took = at == null ? OptionalLong.empty() : at.notedSeconds(part);
            @Nullable Long plan = entry == null ? null : planned(attempt, entry, part);
            if (took.isPresent() || plan != null) {
                times.add(new StepTime(part, plan, took.isPresent() ? (Long) took.getAsLong() : null));
            }
        }
        return times;
    }
}

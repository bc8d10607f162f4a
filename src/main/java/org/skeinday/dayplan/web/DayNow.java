package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.Steps;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.StepsStore;
import org.skeinday.attempt.web.MotorsAtHand;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.dayplan.AttemptAhead;
import org.skeinday.dayplan.Besides;
import org.skeinday.dayplan.DayPlan;
import org.skeinday.dayplan.EventSetting;
import org.skeinday.dayplan.Person;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Setback;
import org.skeinday.dayplan.Supposed;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.motor.BenchWork;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.standing.Scoring;

/**
 * The day of the team's own entries as the plan needs it: who else flies has windows of their own.
 *
 * @param zeroMs the plan's zero, ms since 1970 UTC: whole minutes, not after anything that is planned or has begun
 * @param now seconds since then
 * @param setbacks what keeps people or models away and is not over
 * @param crew ids of everybody who helps with the event
 * @param entryNames of own entries, by id
 * @param taken the plan in force, null before the first
 */
record DayNow(
        EventAdded event,
        long zeroMs,
        long now,
        Supposed day,
        List<Setback> setbacks,
        List<String> crew,
        SortedMap<String, String> entryNames,
        @Nullable PlanTaken taken) {
    private static final long MINUTE_MS = 60_000;
    /** Own default: what is in the air or lies wound waits no longer than this for the release. */
    private static final long LONGEST_HOLD_S = 60;
    /** From the end of winding to where a motor lies down to rest: loaded, flown, run back. */
    private static final long TURN_ROUND_S =
            Part.LOAD.defaultSeconds() + Part.FLY.defaultSeconds() + Part.RUN_BACK.defaultSeconds();

    static Optional<DayNow> read(Tx tx, long nowMs) {
        return EventStore.next(tx).map(event -> new Reader(tx, event, nowMs).read());
    }

    /** The day without what the plan in force has given up: that is no news while it holds. */
    Supposed asTaken() {
        return withoutGivenUp(day);
    }

    /** The same of a day that is supposed. */
    Supposed withoutGivenUp(Supposed supposed) {
        Supposed left = supposed;
        for (AttemptAhead attempt : supposed.attempts()) {
            left = attempt.begun().isEmpty() && givenUp().contains(attempt.id())
                    ? left.withoutAttempt(attempt.id())
                    : left;
        }
        return left;
    }

    List<String> givenUp() {
        return taken == null ? List.of() : taken.givenUp();
    }

    /** The plan in force by the plan's own clock; null before the first. */
    @Nullable
    DayPlan inForce() {
        if (taken == null) {
            return null;
        }
        SortedMap<String, Long> starts = new TreeMap<>();
        SortedMap<String, List<String>> people = new TreeMap<>();
        SortedMap<String, String> motors = new TreeMap<>();
        taken.tasks().forEach(task -> {
            starts.put(task.task(), (task.startMs() - zeroMs) / 1000);
            if (!task.who().isEmpty()) {
                people.put(task.task(), task.who());
            }
            String motor = task.motor();
            if (motor != null) {
                motors.put(task.task(), motor);
            }
        });
        return new DayPlan(starts, people, motors);
    }

    /** As they are now, one for each own entry that still flies; of no window where it has none. */
    List<PlanTaken.Window> windows() {
        SortedMap<String, PlanTaken.Window> windows = new TreeMap<>();
        for (AttemptAhead attempt : day.attempts()) {
            Long opens = attempt.opens();
            Long closes = attempt.closes();
            windows.put(
                    attempt.entry(),
                    new PlanTaken.Window(
                            attempt.entry(),
                            opens == null ? null : (Long) ms(opens),
                            closes == null ? null : (Long) ms(closes)));
        }
        return List.copyOf(windows.values());
    }

    String entryName(String id) {
        return entryNames.getOrDefault(id, "An entry");
    }

    long ms(long seconds) {
        return zeroMs + seconds * 1000;
    }

    private static final class Reader {
        private final Tx tx;
        private final EventAdded event;
        private final long nowMs;
        private final FlightRules rules;
        private final List<AttemptNow> attempts;
        private final Map<String, Steps> told = new TreeMap<>();
        private final MotorsAtHand motors;
        private final List<Setback> setbacks;
        private final @Nullable PlanTaken taken;

        Reader(Tx tx, EventAdded event, long nowMs) {
            this.tx = tx;
            this.event = event;
            this.nowMs = nowMs;
            this.rules = FlightRulesStore.of(tx, event.id());
            this.attempts = AttemptStore.ofEvent(tx, event.id());
            this.motors = new MotorsAtHand(tx);
            this.taken = PlanStore.inForce(tx, event.id()).orElse(null);
            this.setbacks = PlanStore.setbacks(tx, event.id());
            StepsStore.ofOwn(tx).forEach(s -> told.put(s.attempt(), s));
        }

        DayNow read() {
            long zero = zero();
            SortedMap<String, String> names = new TreeMap<>();
            EntryStore.ofEvent(tx, event.id()).stream()
                    .filter(EntryAdded::own)
                    .forEach(e -> names.put(e.id(), e.name()));
            List<AttemptAhead> ahead = EntryStore.ofEvent(tx, event.id()).stream()
                    .filter(EntryAdded::own)
                    .flatMap(entry -> ahead(entry, zero))
                    .toList();
            return new DayNow(
                    event,
                    zero,
                    Math.max(0, (nowMs - zero) / 1000),
                    new Supposed(
                            ahead,
                            Estimate.ofAttempts(List.copyOf(told.values())),
                            setting(),
                            new SetbacksNow(setbacks, nowMs, zero, id -> names.getOrDefault(id, id)).besides()),
                    setbacks,
                    CrewStore.ofEvent(tx, event.id()).stream()
                            .map(CrewAdded::personId)
                            .distinct()
                            .toList(),
                    names,
                    taken);
        }

        private long zero() {
            long first = nowMs;
            for (AttemptNow attempt : attempts) {
                Long called = attempt.calledAtMs();
                if (attempt.state().isOpen() && called != null) {
                    first = Math.min(first, called);
                }
            }
            if (taken != null) {
                for (PlanTaken.Planned task : taken.tasks()) {
                    first = Math.min(first, task.startMs());
                }
            }
            return first - Math.floorMod(first, MINUTE_MS);
        }

        /** The attempt under way and those that the rules still give. */
        private Stream<AttemptAhead> ahead(EntryAdded entry, long zero) {
            List<AttemptNow> own = attempts.stream()
                    .filter(a -> a.entryId().equals(entry.id()))
                    .toList();
            int left = OfficialFlights.tally(own, Scoring.of(event, rules)).flightsLeft();
            Optional<AttemptNow> open =
                    own.stream().filter(a -> a.state().isOpen()).findFirst();
            List<AttemptAhead> ahead = new ArrayList<>();
            open.ifPresent(a -> ahead.add(attempt(entry, a.number(), a, zero)));
            int next = own.size() + 1;
            boolean over = WindowStore.of(tx, event.id(), entry.id())
                    .filter(w -> w.closesAtMs() <= nowMs)
                    .isPresent();
            for (int i = ahead.size(); i < left && !over; i++) {
                ahead.add(attempt(entry, next++, null, zero));
            }
            return ahead.stream();
        }

        private AttemptAhead attempt(EntryAdded entry, int number, @Nullable AttemptNow open, long zero) {
            Optional<WindowAdded> window = WindowStore.of(tx, event.id(), entry.id());
            return new AttemptAhead(
                    entry.name(),
                    number,
                    window.map(w -> Math.floorDiv(w.opensAtMs() - zero, 1000L)).orElse(null),
                    window.map(w -> Math.floorDiv(w.closesAtMs() - zero, 1000L)).orElse(null),
                    true,
                    ranked(entry, open),
                    open == null ? List.of() : begun(told.get(open.id()), zero, entry, number),
                    open == null ? benchSeconds(entry) : 0);
        }

        private List<MotorLife> planned(EntryAdded entry) {
            return motors.planned(entry, ModelStore.ofEntry(tx, entry.id()));
        }

        /** The least that any of its motors needs, where all are handed in: nothing may be done to them before. */
        private long benchSeconds(EntryAdded entry) {
            List<MotorLife> planned = planned(entry);
            return planned.isEmpty() || !planned.stream().allMatch(MotorLife::handedIn)
                    ? 0
                    : planned.stream()
                            .mapToLong(
                                    life -> BenchWork.of(life, waits(), nowMs).leastS())
                            .min()
                            .orElse(0);
        }

        private Map<Wait.Name, Wait> waits() {
            Map<Wait.Name, Wait> waits = new EnumMap<>(Wait.Name.class);
            for (Wait.Name name : Wait.Name.values()) {
                waits.put(name, MotorLifeStore.wait(tx, name));
            }
            return waits;
        }

        private SortedMap<String, Integer> ranked(EntryAdded entry, @Nullable AttemptNow open) {
            List<MotorAdded> hand =
                    planned(entry).stream().map(MotorLife::motor).toList();
            SortedMap<String, Integer> ranked = new TreeMap<>();
            for (int i = 0; i < hand.size(); i++) {
                ranked.put(hand.get(i).tag(), i);
            }
            String chosen = open == null ? null : open.motorId();
            if (chosen != null) {
                Optional<MotorAdded> motor = MotorStore.find(tx, chosen);
                if (motor.isPresent()) {
                    ranked.clear();
                    ranked.put(motor.get().tag(), 0);
                }
            }
            return ranked;
        }

        /** What was passed over took no time. */
        private List<AttemptAhead.Begun> begun(@Nullable Steps a, long zero, EntryAdded entry, int number) {
            if (a == null || a.calledAtMs() == null) {
                return List.of();
            }
            @Nullable
            Long[] starts = {a.calledAtMs(), a.windingAtMs(), a.holdingAtMs(), a.releasedAtMs(), a.landedAtMs()};
            int last = 0;
            for (int i = 0; i < starts.length; i++) {
                last = starts[i] == null ? last : i;
            }
            List<AttemptAhead.Begun> begun = new ArrayList<>();
            long start = second(starts[0], zero, 0);
            for (int i = 0; i <= last; i++) {
                long next = i == last ? 0 : second(later(starts, i + 1), zero, start);
                Part part = Part.values()[i];
                begun.add(new AttemptAhead.Begun(part, start, i == last ? null : (Long) next)
                        .by(who(entry, number, part)));
                start = next;
            }
            return begun;
        }

        /** Whom the plan in force names, else who is named for the entry: nobody notes it while it runs. */
        private @Nullable String who(EntryAdded entry, int number, Part part) {
            String task = entry.name() + " " + number + " " + part.word();
            Optional<String> planned = taken == null
                    ? Optional.empty()
                    : taken.tasks().stream()
                            .filter(t -> t.task().equals(task))
                            .flatMap(t -> t.who().stream())
                            .findFirst();
            String does = part == Part.WIND ? EventSetting.WINDS : part == Part.LOAD ? EventSetting.LOADS : "";
            return planned.or(() -> EntryStore.tasksOf(tx, entry.id()).stream()
                            .filter(t -> t.task().equals(does))
                            .map(EntryTask::personId)
                            .findFirst())
                    .filter(person -> setbacks.stream().noneMatch(s -> SetbacksNow.isAway(s, person, nowMs)))
                    .orElse(null);
        }

        private static @Nullable Long later(@Nullable Long[] starts, int from) {
            for (int i = from; i < starts.length; i++) {
                if (starts[i] != null) {
                    return starts[i];
                }
            }
            return null;
        }

        /** A clock that was set must not turn a day round. */
        private static long second(@Nullable Long ms, long zero, long least) {
            return ms == null ? least : Math.max(least, (ms - zero) / 1000);
        }

        private EventSetting setting() {
            int stations = Math.max(1, StationStore.all(tx).size());
            int watches = event.kind().equals("visiting") ? 0 : event.timekeepers();
            return new EventSetting(
                    stations,
                    1,
                    watches,
                    watches,
                    rules.inside().equals("release"),
                    LONGEST_HOLD_S,
                    true,
                    crew(),
                    rests());
        }

        /** From the end of winding: the flight and the running back are part of the least rest that is asked for. */
        private SortedMap<String, Long> rests() {
            long least = MotorLifeStore.wait(tx, Wait.Name.REST).minimumS();
            SortedMap<String, Long> rests = new TreeMap<>();
            if (least > 0) {
                MotorStore.all(tx).forEach(m -> rests.put(m.tag(), least + TURN_ROUND_S));
            }
            return rests;
        }

        private List<Person> crew() {
            Map<String, TreeSet<String>> may = new TreeMap<>();
            for (CrewAdded one : CrewStore.ofEvent(tx, event.id())) {
                Stream.of(EventSetting.WINDS, EventSetting.LOADS, Besides.RETRIEVES)
                        .filter(one::does)
                        .forEach(task -> may.computeIfAbsent(one.personId(), p -> new TreeSet<>())
                                .add(task));
            }
            if (may.values().stream().noneMatch(p -> p.contains(Besides.RETRIEVES))) {
                may.put(SetbacksNow.VENUE, new TreeSet<>(List.of(Besides.RETRIEVES)));
            }
            boolean both = Stream.of(EventSetting.WINDS, EventSetting.LOADS)
                    .allMatch(task -> may.values().stream().anyMatch(p -> p.contains(task)));
            return both
                    ? may.entrySet().stream()
                            .filter(e -> setbacks.stream().noneMatch(s -> SetbacksNow.isGone(s, e.getKey())))
                            .map(e -> new Person(e.getKey(), e.getValue()))
                            .toList()
                    : List.of(); // a crew that nobody has entered is no reason to have no plan
        }
    }
}

package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptCount;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.StepTimes;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HallWindows;
import org.skeinday.attempt.store.StepsStore;
import org.skeinday.attempt.web.MotorsAtHand;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.dayplan.AttemptAhead;
import org.skeinday.dayplan.EventSetting;
import org.skeinday.dayplan.ParallelTasks;
import org.skeinday.dayplan.Person;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Scenario;
import org.skeinday.dayplan.Setback;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.motor.BenchWork;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.standing.Scoring;

/** Reads the day of the own entries into what the plan needs. */
final class PlanDayReader {
    private static final long MINUTE_MS = 60_000;
    /** Own default: what is in the air or lies wound waits no longer than this for the release. */
    private static final long LONGEST_HOLD_S = 60;
    /** From the end of winding to where a motor lies down to rest: loaded, flown, run back. */
    private static final long TURN_ROUND_S =
            Part.LOAD.defaultSeconds() + Part.FLY.defaultSeconds() + Part.RUN_BACK.defaultSeconds();

    private final Tx tx;
    private final EventAdded event;
    private final long nowMs;
    private final FlightRules rules;
    private final List<AttemptNow> attempts;
    private final Map<String, StepTimes> told = new TreeMap<>();
    private final MotorsAtHand motors;
    private final Map<Wait.Name, Wait> waits;
    private final List<Setback> setbacks;
    private final @Nullable PlanTaken taken;
    private final List<EntryAdded> entries;
    private final boolean isOnlyOthers;
    private final List<CrewAdded> helpers;

    PlanDayReader(Tx tx, EventAdded event, long nowMs) {
        this.tx = tx;
        this.event = event;
        this.nowMs = nowMs;
        this.rules = FlightRulesStore.of(tx, event.id());
        this.attempts = AttemptStore.ofEvent(tx, event.id());
        this.motors = new MotorsAtHand(tx);
        this.waits = MotorLifeStore.waits(tx);
        this.taken = PlanStore.inForce(tx, event.id()).orElse(null);
        this.setbacks = PlanStore.setbacks(tx, event.id());
        List<EntryAdded> all = EntryStore.ofEvent(tx, event.id());
        this.entries = all.stream().filter(EntryAdded::own).toList();
        this.isOnlyOthers = entries.isEmpty() && !all.isEmpty();
        this.helpers = CrewStore.ofEvent(tx, event.id());
        StepsStore.ofOwn(tx).forEach(s -> told.put(s.attempt(), s));
    }

    DayNow read() {
        long zero = zero();
        SortedMap<String, String> names = new TreeMap<>();
        entries.forEach(e -> names.put(e.id(), e.name()));
        List<AttemptAhead> ahead =
                entries.stream().flatMap(entry -> ahead(entry, zero)).toList();
        return new DayNow(
                event,
                zero,
                Math.max(0, (nowMs - zero) / 1000),
                new Scenario(
                        ahead,
                        Estimate.ofAttempts(List.copyOf(told.values())),
                        setting(),
                        new SetbacksNow(setbacks, nowMs, zero, id -> names.getOrDefault(id, id)).besides()),
                setbacks,
                helpers.stream().map(CrewAdded::personId).distinct().toList(),
                names,
                isOnlyOthers,
                ready(),
                taken);
    }

    private long zero() {
        long first = nowMs;
        for (AttemptNow attempt : attempts) {
            Long called = attempt.calledAtMs();
            if (attempt.isOpen() && called != null) {
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

    /** Those under way, also one that was opened again meanwhile, and those that the rules still give. */
    private Stream<AttemptAhead> ahead(EntryAdded entry, long zero) {
        List<AttemptNow> own =
                attempts.stream().filter(a -> a.entryId().equals(entry.id())).toList();
        int left = OfficialFlights.tally(own, Scoring.of(event, rules)).flightsLeft();
        SortedMap<Integer, AttemptNow> open = new TreeMap<>(); // of two tries of one attempt the later
        own.stream().filter(a -> a.isOpen()).forEach(a -> open.put(a.number().rule(), a));
        var flies = new Flies(
                entry,
                HallWindows.of(tx, event.id(), entry.id(), nowMs),
                motors.planned(entry, ModelStore.ofEntry(tx, entry.id())));
        List<AttemptAhead> ahead = new ArrayList<>();
        open.values().stream().filter(this::isStillToDo).forEach(a -> ahead.add(attempt(flies, a.number(), a, zero)));
        int most = Scoring.of(event, rules).flights().flights();
        AttemptNumber next = nextNumber(own);
        boolean over = flies.window().filter(w -> w.closesAtMs() <= nowMs).isPresent();
        for (int i = open.size(); i < left && next.rule() <= most && !over; i++) {
            ahead.add(attempt(flies, next, null, zero));
            next = next.following();
        }
        return ahead.stream();
    }

    /** Of a card that was keyed in and opened again nobody knows the times; it has landed and is not flown anew. */
    private boolean isStillToDo(AttemptNow open) {
        StepTimes times = told.get(open.id());
        return !open.waitsForItsTime() || times != null && times.calledAtMs() != null;
    }

    private AttemptNumber nextNumber(List<AttemptNow> own) {
        List<AttemptCount.Tried> tried =
                own.stream().map(AttemptCount.Tried::of).toList();
        return AttemptCount.of(tried, Scoring.of(event, rules), true).next();
    }

    /** An entry with what all its attempts share. @param motors the best first */
    private record Flies(EntryAdded entry, Optional<WindowAdded> window, List<MotorLife> motors) {}

    private AttemptAhead attempt(Flies flies, AttemptNumber number, @Nullable AttemptNow open, long zero) {
        Optional<WindowAdded> window = flies.window();
        return new AttemptAhead(
                flies.entry().name(),
                number.rule(),
                window.map(w -> Math.floorDiv(w.opensAtMs() - zero, 1000L)).orElse(null),
                window.map(w -> Math.floorDiv(w.closesAtMs() - zero, 1000L)).orElse(null),
                true,
                ranked(flies.motors(), open),
                open == null
                        ? List.of()
                        : new PartsBegun(tx, taken, setbacks, nowMs)
                                .of(told.get(open.id()), zero, flies.entry(), number),
                open == null ? benchSeconds(flies.motors()) : 0,
                open == null ? motorFrom(flies, zero) : 0);
    }

    /** Where all of its motors are just off a wind or a flight: when the first of them may be wound again, in seconds. */
    private long motorFrom(Flies flies, long zero) {
        boolean later = flies.motors().stream().allMatch(life -> motors.comesLater(flies.entry(), life));
        OptionalLong least = flies.motors().stream().mapToLong(this::leastS).min();
        return later && least.isPresent() ? (nowMs - zero) / 1000 + least.getAsLong() : 0;
    }

    private long leastS(MotorLife life) {
        return BenchWork.of(life, waits, nowMs).leastS();
    }

    /** Those that may not be wound at once, with when they may, ms since 1970 UTC, by tag. */
    private SortedMap<String, Long> ready() {
        SortedMap<String, Long> ready = new TreeMap<>();
        for (EntryAdded entry : entries) {
            motors.planned(entry, ModelStore.ofEntry(tx, entry.id())).stream()
                    .filter(life -> motors.comesLater(entry, life) && leastS(life) > 0)
                    .forEach(life -> ready.put(life.motor().tag(), nowMs + leastS(life) * 1000));
        }
        return ready;
    }

    /** The least that any of these needs, where all are handed in: nothing may be done to them before. */
    private long benchSeconds(List<MotorLife> planned) {
        if (planned.isEmpty() || !planned.stream().allMatch(MotorLife::handedIn)) {
            return 0;
        }
        return planned.stream().mapToLong(this::leastS).min().orElse(0);
    }

    private SortedMap<String, Integer> ranked(List<MotorLife> hand, @Nullable AttemptNow open) {
        SortedMap<String, Integer> ranked = new TreeMap<>();
        for (int i = 0; i < hand.size(); i++) {
            ranked.put(hand.get(i).motor().tag(), i);
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

    private EventSetting setting() {
        int stations = Math.max(1, StationStore.all(tx).size());
        int watches = event.dayKind() == DayKind.VISITING ? 0 : event.timekeepers();
        return new EventSetting(
                stations, 1, watches, watches, !rules.mustLandInside(), LONGEST_HOLD_S, true, crew(), rests());
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
        for (CrewAdded one : helpers) {
            Stream.of(EventSetting.WINDS, EventSetting.LOADS, ParallelTasks.RETRIEVES)
                    .filter(one::does)
                    .forEach(task -> may.computeIfAbsent(one.personId(), p -> new TreeSet<>())
                            .add(task));
        }
        if (may.values().stream().noneMatch(p -> p.contains(ParallelTasks.RETRIEVES))) {
            may.put(SetbacksNow.VENUE, new TreeSet<>(List.of(ParallelTasks.RETRIEVES)));
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

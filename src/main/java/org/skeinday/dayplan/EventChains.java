package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.Part;

/** The problem of a day, in seconds: one chain of parts for each attempt, an entry's attempts one after the other. */
public final class EventChains {
    static final String STATION = "winding station";
    static final String AIR = "air";
    static final String TIMEKEEPER = "timekeeper";
    static final String POLE = "pole";
    /** How much more it hurts when an attempt that counts gets the lesser motor. */
    private static final int COUNTS = 10;
    /** Preparing ends at most so long before winding, where that costs nothing else (common practice). */
    private static final long READY_SECONDS = 300;
    /** A second of hold bleeds the motor, a second of standing prepared costs next to nothing. */
    private static final long HOLD_WEIGHT = 100;

    private final Map<Part, Estimate> estimates;
    private final EventSetting setting;
    private final long now;
    private final List<Task> tasks = new ArrayList<>();
    private final List<Lag> lags = new ArrayList<>();
    private final List<Together> together = new ArrayList<>();
    private final Map<String, AttemptAhead> last = new LinkedHashMap<>();

    private EventChains(Map<Part, Estimate> estimates, EventSetting setting, long now) {
        this.estimates = estimates;
        this.setting = setting;
        this.now = now;
    }

    /**
     * @param attempts an entry's own in their order
     * @param estimates the part's default where one is missing
     * @param now seconds since the plan's zero: nothing that has not begun starts before
     * @param inForce null before the first plan
     */
    public static PlanProblem of(
            List<AttemptAhead> attempts,
            Map<Part, Estimate> estimates,
            EventSetting setting,
            long now,
            @Nullable DayPlan inForce) {
        return of(attempts, estimates, setting, Besides.NOTHING, now, inForce);
    }

    /** As above, with absences, repairs and retrievals. */
    public static PlanProblem of(
            List<AttemptAhead> attempts,
            Map<Part, Estimate> estimates,
            EventSetting setting,
            Besides besides,
            long now,
            @Nullable DayPlan inForce) {
        EventChains chains = new EventChains(estimates, setting, now);
        attempts.forEach(chains::chain);
        chains.besides(besides, attempts);
        List<Resource> places = List.of(
                chains.place(STATION, setting.stations()),
                chains.place(AIR, setting.air()),
                chains.place(TIMEKEEPER, setting.timekeepers()),
                chains.place(POLE, besides.poles()));
        return new PlanProblem(
                chains.tasks, places, chains.lags, setting.crew(), setting.motorRest(), chains.together, inForce);
    }

    /** What runs at once is a fact and no reason to have no plan: then there is room for just that. */
    private Resource place(String id, int capacity) {
        int most = capacity;
        for (Task at : tasks) {
            if (at.isFixed() && at.duration() > 0) {
                long begun = at.earliestStart();
                int held = tasks.stream()
                        .filter(other -> other.isFixed()
                                && other.earliestStart() <= begun
                                && begun < other.earliestStart() + other.duration())
                        .mapToInt(other -> other.needs().getOrDefault(id, 0))
                        .sum();
                most = Math.max(most, held);
            }
        }
        return new Resource(id, most);
    }

    /** @return the name of the task */
    public static String task(AttemptAhead attempt, Part part) {
        return task(attempt.entry(), attempt.number(), part);
    }

    /** The same for an attempt that is over. @param entry its name */
    public static String task(String entry, int number, Part part) {
        return entry + " " + number + " " + part.word();
    }

    /** Names an attempt as a whole, for people. */
    static String whole(AttemptAhead attempt) {
        return "attempt " + attempt.number() + " of " + attempt.entry();
    }

    private void besides(Besides besides, List<AttemptAhead> attempts) {
        // Whoever does nothing that is planned may be away.
        besides.absences().stream()
                .filter(one -> one.until() > now && isCrew(one.person()))
                .forEach(this::away);
        for (Besides.Retrieval one : besides.retrievals()) {
            long lasts = lasting(one.seconds(), one.began());
            Task task = Task.of(one.entry() + " retrieval before " + one.before(), lasts)
                    .needing(POLE, 1);
            tasks.add(person(begunOrFrom(task, one.earliest(), one.began()), Besides.RETRIEVES));
            holdUp(task.id(), lasts, attempts, one.entry(), one.before());
        }
        for (Besides.Repair one : besides.repairs()) {
            String id = one.entry() + " repair before " + one.before();
            long lasts = lasting(one.work(), one.began());
            tasks.add(begunOrFrom(Task.of(id, lasts), one.earliest(), one.began()));
            holdUp(id, lasts + one.cure(), attempts, one.entry(), one.before());
            besides.retrievals().stream()
                    .filter(down ->
                            one.began() == null && down.entry().equals(one.entry()) && down.before() == one.before())
                    .forEach(down -> lags.add(Lag.between(
                            down.entry() + " retrieval before " + down.before(),
                            id,
                            lasting(down.seconds(), down.began()),
                            null)));
        }
    }

    /** The same however the plan's zero moves; a second absence of a person has its start in the name. */
    private String awayName(Besides.Absence one) {
        String name = one.person() + " away";
        return tasks.stream().anyMatch(task -> task.id().equals(name)) ? name + " from " + one.from() : name;
    }

    /** What runs takes as long as planned, or longer where it already has. */
    private long lasting(long planned, @Nullable Long began) {
        return began == null ? planned : Math.max(planned, now - began);
    }

    private Task begunOrFrom(Task task, long earliest, @Nullable Long began) {
        return began == null ? task.within(Math.max(now, earliest), null) : task.fixedAt(began);
    }

    private void away(Besides.Absence one) {
        long from = Math.max(0, one.from()); // it keeps its start, so that a plan that knows it stays as it is
        tasks.add(Task.of(awayName(one), one.until() - from)
                .needingPerson(PersonNeed.of(one.person()))
                .fixedAt(from));
    }

    /** The first attempt that needs the model waits; what comes after it follows. */
    private void holdUp(String id, long least, List<AttemptAhead> attempts, String entry, int before) {
        attempts.stream()
                .filter(attempt ->
                        attempt.entry().equals(entry) && attempt.number() >= before && attempt.begun(Part.WIND) == null)
                .findFirst()
                .ifPresent(attempt -> lags.add(Lag.between(
                        id, task(attempt, attempt.begun().isEmpty() ? Part.PREPARE : Part.WIND), least, null)));
    }

    private void chain(AttemptAhead attempt) {
        for (Part part : Part.values()) {
            tasks.add(task(attempt, part, seconds(attempt, part)));
        }
        for (int i = 1; i < Part.values().length; i++) {
            follow(attempt, Part.values()[i - 1], attempt, Part.values()[i]);
        }
        prepareLate(attempt);
        hold(attempt);
        AttemptAhead before = last.put(attempt.entry(), attempt);
        if (before != null) {
            follow(before, Part.RUN_BACK, attempt, Part.PREPARE);
            together.add(new Together(task(before, Part.WIND), task(attempt, Part.WIND)));
            together.add(new Together(task(before, Part.LOAD), task(attempt, Part.LOAD)));
        }
    }

    private Task task(AttemptAhead attempt, Part part, long seconds) {
        AttemptAhead.Begun begun = attempt.begun(part);
        Task task = Task.of(task(attempt, part), seconds).inChain(whole(attempt));
        if (begun == null) {
            Task ahead = needs(task, attempt, part);
            return ahead.within(earliest(attempt, part), latestEnd(attempt, part, seconds));
        }
        Task fixed = task.fixedAt(begun.start());
        if (begun.end() == null) {
            return needs(fixed, attempt, part);
        }
        Task over = pinned(fixed, begun.who());
        return part == Part.WIND ? over.takingOneOf(motors(attempt)) : over;
    }

    /** What ran takes what it took; what runs takes as long as planned, or longer where it already has. */
    private long seconds(AttemptAhead attempt, Part part) {
        Estimate estimate = estimates.getOrDefault(part, Estimate.of(part, List.of()));
        long planned = setting.careful() ? estimate.careful() : estimate.median();
        AttemptAhead.Begun begun = attempt.begun(part);
        if (begun == null) {
            return part == Part.PREPARE ? planned + attempt.benchSeconds() : planned;
        }
        return begun.end() == null ? Math.max(planned, now - begun.start()) : begun.end() - begun.start();
    }

    private long earliest(AttemptAhead attempt, Part part) {
        Long opens = attempt.opens();
        boolean inside = part == Part.WIND || part == Part.PREPARE && attempt.benchSeconds() > 0;
        return inside && opens != null ? Math.max(now, opens) : now;
    }

    private @Nullable Long latestEnd(AttemptAhead attempt, Part part, long seconds) {
        Long closes = attempt.closes();
        if (part != Part.FLY || closes == null) {
            return null;
        }
        long inside = setting.startInside() ? closes + seconds : closes;
        return attempt.begun().isEmpty() ? (Long) inside : (Long) Math.max(inside, soonestLanding(attempt));
    }

    /** What is under way is flown as soon as it can be: that it comes late is a fact and no reason to have no plan. */
    private long soonestLanding(AttemptAhead attempt) {
        long at = now;
        for (Part part : Part.values()) {
            AttemptAhead.Begun begun = attempt.begun(part);
            if (begun == null) {
                at += seconds(attempt, part);
            } else if (begun.end() == null) {
                at = Math.max(at, begun.start() + seconds(attempt, part));
            }
            if (part == Part.FLY) {
                break;
            }
        }
        return at;
    }

    private Task needs(Task task, AttemptAhead attempt, Part part) {
        return switch (part) {
            case PREPARE -> task;
            case WIND ->
                person(task.needing(STATION, 1), attempt.begun(part), EventSetting.WINDS)
                        .takingOneOf(motors(attempt));
            case LOAD -> person(task, attempt.begun(part), EventSetting.LOADS);
            case FLY ->
                setting.perFlight() == 0
                        ? task.needing(AIR, 1)
                        : task.needing(AIR, 1).needing(TIMEKEEPER, setting.perFlight());
            case RUN_BACK -> task.needing(STATION, 1);
        };
    }

    private Task person(Task task, String clearance) {
        return setting.crew().isEmpty() ? task : task.needingPerson(PersonNeed.anyone(clearance));
    }

    /** Whoever does what runs goes on with it, cleared or not: it is a fact. */
    private Task person(Task task, AttemptAhead.@Nullable Begun begun, String clearance) {
        return begun != null && isCrew(begun.who()) ? pinned(task, begun.who()) : person(task, clearance);
    }

    /** Somebody who is not in the crew is nobody that the plan could miss. */
    private Task pinned(Task task, @Nullable String who) {
        return who != null && isCrew(who) ? task.needingPerson(PersonNeed.of(who)) : task;
    }

    private boolean isCrew(@Nullable String who) {
        return setting.crew().stream().anyMatch(person -> person.id().equals(who));
    }

    private Map<String, Integer> motors(AttemptAhead attempt) {
        Map<String, Integer> dislikes = new TreeMap<>();
        attempt.motors().forEach((motor, rank) -> dislikes.put(motor, attempt.counts() ? COUNTS * rank : rank));
        return dislikes;
    }

    private void follow(AttemptAhead before, Part first, AttemptAhead after, Part second) {
        if (after.begun(second) == null) {
            lags.add(Lag.between(task(before, first), task(after, second), seconds(before, first), null));
        }
    }

    /** What stands prepared for long is prepared again: little matters, but nobody begins hours before. */
    private void prepareLate(AttemptAhead attempt) {
        if (attempt.begun(Part.PREPARE) == null) {
            long most = seconds(attempt, Part.PREPARE) + READY_SECONDS;
            lags.add(Lag.preferred(task(attempt, Part.PREPARE), task(attempt, Part.WIND), null, most, 1));
        }
    }

    /** Once winding is over, a hold that has become too long is a fact and no reason to have no plan. */
    private void hold(AttemptAhead attempt) {
        if (attempt.begun(Part.FLY) != null) {
            return;
        }
        String wind = task(attempt, Part.WIND);
        String fly = task(attempt, Part.FLY);
        long wound = seconds(attempt, Part.WIND);
        long loaded = seconds(attempt, Part.LOAD);
        if (attempt.begun(Part.LOAD) == null) {
            long most = wound + Math.max(setting.longestHold(), loaded);
            lags.add(new Lag(wind + " hold", wind, fly, null, most, 0));
        }
        lags.add(Lag.preferred(wind, fly, null, wound + loaded, HOLD_WEIGHT));
    }
}

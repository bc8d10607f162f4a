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

    private final EventSetting setting;
    private final PartTimes times;
    private final CrewNeeds crew;
    private final List<Task> tasks = new ArrayList<>();
    private final List<Lag> lags = new ArrayList<>();
    private final List<Together> together = new ArrayList<>();
    private final Map<String, AttemptAhead> last = new LinkedHashMap<>();

    private EventChains(Map<Part, Estimate> estimates, EventSetting setting, long now) {
        this.setting = setting;
        this.times = new PartTimes(estimates, setting, now);
        this.crew = new CrewNeeds(setting);
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
        return of(attempts, estimates, setting, ParallelTasks.NOTHING, now, inForce);
    }

    /** As above, with absences, repairs and retrievals. */
    public static PlanProblem of(
            List<AttemptAhead> attempts,
            Map<Part, Estimate> estimates,
            EventSetting setting,
            ParallelTasks besides,
            long now,
            @Nullable DayPlan inForce) {
        EventChains chains = new EventChains(estimates, setting, now);
        attempts.forEach(chains::chain);
        BesideTasks beside = BesideTasks.of(besides, attempts, chains.crew, now);
        chains.tasks.addAll(beside.tasks());
        chains.lags.addAll(beside.lags());
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
        return PartTask.of(entry, number, part).toString();
    }

    /** Names an attempt as a whole, for people. */
    static String whole(AttemptAhead attempt) {
        return "attempt " + attempt.number() + " of " + attempt.entry();
    }

    private void chain(AttemptAhead attempt) {
        for (Part part : Part.values()) {
            tasks.add(task(attempt, part, times.seconds(attempt, part)));
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
            return ahead.within(times.earliest(attempt, part), times.latestEnd(attempt, part, seconds));
        }
        Task fixed = task.fixedAt(begun.start());
        if (begun.end() == null) {
            return needs(fixed, attempt, part);
        }
        Task over = crew.pinned(fixed, begun.who());
        return part == Part.WIND ? over.takingOneOf(motors(attempt)) : over;
    }

    private Task needs(Task task, AttemptAhead attempt, Part part) {
        return switch (part) {
            case PREPARE -> task;
            case WIND ->
                crew.person(task.needing(STATION, 1), attempt.begun(part), EventSetting.WINDS)
                        .takingOneOf(motors(attempt));
            case LOAD -> crew.person(task, attempt.begun(part), EventSetting.LOADS);
            case FLY ->
                setting.perFlight() == 0
                        ? task.needing(AIR, 1)
                        : task.needing(AIR, 1).needing(TIMEKEEPER, setting.perFlight());
            case RUN_BACK -> task.needing(STATION, 1);
        };
    }

    private Map<String, Integer> motors(AttemptAhead attempt) {
        Map<String, Integer> dislikes = new TreeMap<>();
        attempt.motors().forEach((motor, rank) -> dislikes.put(motor, attempt.counts() ? COUNTS * rank : rank));
        return dislikes;
    }

    private void follow(AttemptAhead before, Part first, AttemptAhead after, Part second) {
        if (after.begun(second) == null) {
            lags.add(Lag.between(task(before, first), task(after, second), times.seconds(before, first), null));
        }
    }

    /** What stands prepared for long is prepared again: little matters, but nobody begins hours before. */
    private void prepareLate(AttemptAhead attempt) {
        if (attempt.begun(Part.PREPARE) == null) {
            long most = times.seconds(attempt, Part.PREPARE) + READY_SECONDS;
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
        long wound = times.seconds(attempt, Part.WIND);
        long loaded = times.seconds(attempt, Part.LOAD);
        if (attempt.begun(Part.LOAD) == null) {
            long most = wound + Math.max(setting.longestHold(), loaded);
            lags.add(new Lag(wind + " hold", wind, fly, null, most, 0));
        }
        lags.add(Lag.preferred(wind, fly, null, wound + loaded, HOLD_WEIGHT));
    }
}

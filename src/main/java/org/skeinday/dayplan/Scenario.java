package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.Part;
import org.skeinday.units.Preconditions;

/**
 * What goes into the plan of a day, and the same with one thing otherwise: to see what a change would do before it is made.
 *
 * @param attempts in the order of their entries and numbers
 * @param estimates how long each part takes
 * @param besides absences, repairs and retrievals
 */
public record Scenario(
        List<AttemptAhead> attempts, Map<Part, Estimate> estimates, EventSetting setting, ParallelTasks besides) {
    /** What may be otherwise. */
    public enum What {
        /** Nothing: the day as it is. */
        NOTHING,
        /** The window of an entry moves by so many minutes; less than zero for earlier. */
        WINDOW_MOVES,
        /** A person is not there from now on. */
        PERSON_AWAY,
        /** A motor cannot be used. */
        MOTOR_OUT,
        /** An attempt is left out. */
        ATTEMPT_OUT,
        /** A part takes so many minutes longer each time. */
        PART_LONGER
    }

    /**
     * One change.
     *
     * @param which entry, person, motor, attempt or part by its word
     * @param minutes by which it moves or lasts longer, -600 to 600
     */
    public record Change(What what, String which, int minutes) {
        public static final Change NONE = new Change(What.NOTHING, "", 0);
        public static final int MOST_MINUTES = 600;

        public Change {
            Preconditions.within("A change", minutes, -MOST_MINUTES, MOST_MINUTES, "min");
        }

        /** Whether it is about the same thing, by however many minutes. */
        public boolean isOfTheSame(Change other) {
            return what == other.what && which.equals(other.which);
        }

        public Change by(int minutes) {
            return new Change(what, which, minutes);
        }
    }

    private static final int SECONDS = 60;

    public Scenario {
        attempts = List.copyOf(attempts);
        estimates = Map.copyOf(estimates);
    }

    /** The same with this change. */
    public Scenario with(Change change) {
        return switch (change.what()) {
            case NOTHING -> this;
            case WINDOW_MOVES ->
                attempts(each -> each.entry().equals(change.which()) ? moved(each, change.minutes()) : each);
            case MOTOR_OUT -> attempts(each -> without(each, change.which()));
            case ATTEMPT_OUT -> withoutAttempt(change.which());
            case PERSON_AWAY ->
                new Scenario(
                        attempts,
                        estimates,
                        setting.withCrew(setting.crew().stream()
                                .filter(p -> !p.id().equals(change.which()))
                                .toList()),
                        besides);
            case PART_LONGER -> new Scenario(attempts, longer(change), setting, besides);
        };
    }

    /** Without one attempt; those after it are flown all the same. */
    public Scenario withoutAttempt(String id) {
        return new Scenario(attempts.stream().filter(a -> !a.id().equals(id)).toList(), estimates, setting, besides);
    }

    private Scenario attempts(java.util.function.UnaryOperator<AttemptAhead> deed) {
        return new Scenario(attempts.stream().map(deed).toList(), estimates, setting, besides);
    }

    private static AttemptAhead moved(AttemptAhead attempt, int minutes) {
        Long opens = attempt.opens();
        Long closes = attempt.closes();
        return new AttemptAhead(
                attempt.entry(),
                attempt.number(),
                opens == null ? null : (Long) (opens + (long) minutes * SECONDS),
                closes == null ? null : (Long) (closes + (long) minutes * SECONDS),
                attempt.counts(),
                attempt.motors(),
                attempt.begun(),
                attempt.benchSeconds(),
                attempt.motorFrom());
    }

    private static AttemptAhead without(AttemptAhead attempt, String motor) {
        if (attempt.begun(Part.WIND) != null || attempt.motors().size() < 2) {
            return attempt; // it is wound already, or there is no other: the plan says the same
        }
        var motors = new TreeMap<>(attempt.motors());
        motors.remove(motor);
        return new AttemptAhead(
                attempt.entry(),
                attempt.number(),
                attempt.opens(),
                attempt.closes(),
                attempt.counts(),
                motors,
                attempt.begun(),
                attempt.benchSeconds(),
                attempt.motorFrom());
    }

    private Map<Part, Estimate> longer(Change change) {
        Map<Part, Estimate> others = new EnumMap<>(Part.class);
        others.putAll(estimates);
        for (Part part : Part.values()) {
            if (part.word().equals(change.which())) {
                Estimate now = estimates.getOrDefault(part, Estimate.of(part, List.of()));
                long by = (long) change.minutes() * SECONDS;
                others.put(
                        part,
                        new Estimate(
                                part, Math.max(0, now.median() + by), Math.max(0, now.careful() + by), now.rests()));
            }
        }
        return others;
    }

    /** What the plan is made of. @param now seconds since the plan's zero @param inForce null before the first plan */
    public PlanProblem problem(long now, @Nullable DayPlan inForce) {
        return EventChains.of(attempts, estimates, setting, besides, now, inForce);
    }

    /** The attempts as ids, in order. */
    public List<String> ids() {
        List<String> ids = new ArrayList<>();
        attempts.forEach(a -> ids.add(a.id()));
        return ids;
    }
}

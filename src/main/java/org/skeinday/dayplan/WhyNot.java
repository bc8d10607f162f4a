package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A conflict in words, one line for each requirement. */
public final class WhyNot {
    private static final int MOST_LINES = 12;
    private static final int MOST_NAMES = 8;
    private final PlanProblem problem;
    private final TimeWords words;
    /** By task: the lag by which it starts when another has ended. */
    private final Map<String, String> follows = new HashMap<>();

    private WhyNot(PlanProblem problem, TimeWords words, List<Requirement> conflict) {
        this.problem = problem;
        this.words = words;
        for (Lag lag : problem.lags()) {
            Long min = lag.min();
            if (min != null
                    && lag.max() == null
                    && min == task(lag.from()).duration()
                    && conflict.contains(new Requirement(Requirement.Kind.LAG, lag.id()))) {
                follows.putIfAbsent(lag.to(), lag.id());
            }
        }
    }

    /** One line for each requirement; a lag that says no more than that one task follows another is said with that task. */
    public static List<String> words(PlanProblem problem, List<Requirement> conflict, TimeWords words) {
        WhyNot why = new WhyNot(problem, words, conflict);
        return conflict.stream()
                .filter(one -> !why.follows.containsValue(one.id()) || one.kind() != Requirement.Kind.LAG)
                .map(why::line)
                .toList();
    }

    /**
     * The same for people in a hurry: first the sum that does not come out, where counting shows it, then attempts as a
     * whole where their tasks make too many lines.
     */
    public static List<String> inShort(PlanProblem problem, List<Requirement> conflict, TimeWords words) {
        List<String> lines =
                new ArrayList<>(Reason.of(problem, conflict, words).stream().toList());
        List<String> each = words(problem, conflict, words);
        lines.addAll(each.size() <= MOST_LINES ? each : new WhyNot(problem, words, conflict).byAttempt(conflict));
        return lines;
    }

    private List<String> byAttempt(List<Requirement> conflict) {
        Set<String> named = new LinkedHashSet<>();
        List<String> lines = new ArrayList<>();
        for (Requirement one : conflict) {
            if (one.kind() == Requirement.Kind.TASK) {
                String chain = task(one.id()).chain();
                named.add(chain == null ? one.id() : chain);
            } else if (one.isHolder()) {
                lines.add(line(one));
            }
        }
        lines.add(0, "these cannot all be done in their windows: " + TimeWords.some(named, MOST_NAMES));
        return lines;
    }

    private String line(Requirement one) {
        return switch (one.kind()) {
            case TASK -> bounds(task(one.id()));
            case LAG -> lag(one.id());
            case RESOURCE -> resource(one.id());
            case CLEARANCE -> clearance(one.id());
            case MOTORS -> "a motor serves one task at a time, and rests";
        };
    }

    private Task task(String id) {
        return problem.tasks().stream()
                .filter(other -> other.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private Lag lagOf(String id) {
        return problem.lags().stream()
                .filter(other -> other.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private String bounds(Task task) {
        List<String> bounds = new ArrayList<>();
        if (task.earliestStart() != 0 && !task.isFixed()) {
            bounds.add("starts at " + words.at(task.earliestStart()) + " at the earliest");
        }
        if (task.fixedStart() != null) {
            bounds.add("is fixed at " + words.at(task.fixedStart()));
        }
        if (task.latestEnd() != null) {
            bounds.add("ends by " + words.at(task.latestEnd()));
        }
        String before = follows.get(task.id());
        if (before != null) {
            bounds.add(0, "after " + lagOf(before).from());
        }
        String takes = task.id() + " takes " + words.lasting(task.duration());
        return bounds.isEmpty() ? takes : takes + ", " + String.join(", ", bounds);
    }

    private String lag(String id) {
        Lag lag = lagOf(id);
        List<String> bounds = new ArrayList<>();
        if (lag.min() != null) {
            bounds.add("at least " + words.lasting(lag.min()));
        }
        if (lag.max() != null) {
            bounds.add("at most " + words.lasting(lag.max()));
        }
        return lag.to() + " starts " + String.join(" and ", bounds) + " after the start of " + lag.from();
    }

    private String resource(String id) {
        long capacity = problem.resources().stream()
                .filter(other -> other.id().equals(id))
                .mapToLong(Resource::capacity)
                .sum();
        return "of " + id + " there " + (capacity == 1 ? "is 1" : "are " + capacity);
    }

    private String clearance(String id) {
        List<String> able = problem.people().stream()
                .filter(person -> person.clearances().contains(id))
                .map(Person::id)
                .toList();
        return "cleared for " + id + ": " + (able.isEmpty() ? "nobody" : String.join(", ", able));
    }
}

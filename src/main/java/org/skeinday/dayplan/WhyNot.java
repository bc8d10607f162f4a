package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;

/** A conflict in words, one line for each requirement. */
public final class WhyNot {
    private final PlanProblem problem;
    private final TimeWords words;

    private WhyNot(PlanProblem problem, TimeWords words) {
        this.problem = problem;
        this.words = words;
    }

    public static List<String> words(PlanProblem problem, List<Requirement> conflict, TimeWords words) {
        WhyNot why = new WhyNot(problem, words);
        return conflict.stream().map(why::line).toList();
    }

    private String line(Requirement one) {
        return switch (one.kind()) {
            case TASK -> task(one.id());
            case LAG -> lag(one.id());
            case RESOURCE -> resource(one.id());
            case CLEARANCE -> clearance(one.id());
            case MOTORS -> "a motor serves one task at a time, and rests";
        };
    }

    private String task(String id) {
        Task task = problem.tasks().stream()
                .filter(other -> other.id().equals(id))
                .findFirst()
                .orElseThrow();
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
        String takes = id + " takes " + words.lasting(task.duration());
        return bounds.isEmpty() ? takes : takes + ", " + String.join(", ", bounds);
    }

    private String lag(String id) {
        Lag lag = problem.lags().stream()
                .filter(other -> other.id().equals(id))
                .findFirst()
                .orElseThrow();
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

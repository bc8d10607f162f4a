package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Who does what, dealt out in the order of the starts: whoever did the task's pair, else whoever did it in the plan in
 * force, else the one who may do least else. Quick, mostly good, and now and then a dead end.
 */
final class CrewByTurn {
    private final PlanProblem problem;
    private final DayPlan when;
    private final Map<String, Long> freeAt = new HashMap<>();
    private final Map<String, List<String>> who = new LinkedHashMap<>();
    private final Map<String, String> pairs = new HashMap<>();

    private CrewByTurn(PlanProblem problem, DayPlan when) {
        this.problem = problem;
        this.when = when;
        problem.together().forEach(pair -> {
            pairs.put(pair.first(), pair.second());
            pairs.put(pair.second(), pair.first());
        });
    }

    /** @return people by task; null at a dead end */
    static @Nullable Map<String, List<String>> of(PlanProblem problem, DayPlan when) {
        return new CrewByTurn(problem, when).deal();
    }

    private @Nullable Map<String, List<String>> deal() {
        List<Task> inOrder = problem.tasks().stream()
                .filter(task -> task.duration() > 0 && !task.people().isEmpty())
                .sorted(Comparator.comparingLong((Task task) -> when.start(task.id()))
                        .thenComparing(Task::id))
                .toList();
        for (Task task : inOrder) {
            List<String> chosen = new ArrayList<>();
            for (int need = 0; need < task.people().size(); need++) {
                String person = choose(task, need);
                if (person == null) {
                    return null;
                }
                freeAt.put(person, when.start(task.id()) + task.duration());
                chosen.add(person);
            }
            who.put(task.id(), chosen);
        }
        return who;
    }

    private @Nullable String choose(Task task, int need) {
        long start = when.start(task.id());
        List<String> before =
                problem.inForce() == null ? List.of() : problem.inForce().peopleOf(task.id());
        String same = need < before.size() ? before.get(need) : "";
        List<String> pair = who.getOrDefault(pairs.getOrDefault(task.id(), ""), List.of());
        return problem.people().stream()
                .filter(person -> task.people().get(need).mayBe(person)
                        && freeAt.getOrDefault(person.id(), Long.MIN_VALUE) <= start)
                .min(Comparator.comparing((Person person) -> !pair.contains(person.id()))
                        .thenComparing(person -> !person.id().equals(same))
                        .thenComparing(person -> person.clearances().size())
                        .thenComparing(Person::id))
                .map(Person::id)
                .orElse(null);
    }
}

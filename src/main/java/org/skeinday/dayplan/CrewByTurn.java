package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Who does what, dealt out in the order of the starts: tasks that one person should do go to somebody free for all of
 * them, if there is anybody; then the others one by one. Quick, mostly good, and now and then a dead end.
 */
final class CrewByTurn {
    private final PlanProblem problem;
    private final DayPlan when;
    private final Map<String, Task> tasks;
    private final Map<String, List<Task>> busy = new HashMap<>();
    private final Map<String, List<String>> who = new TreeMap<>();

    private CrewByTurn(PlanProblem problem, DayPlan when) {
        this.problem = problem;
        this.when = when;
        this.tasks = problem.byId();
    }

    /** @return people by task; null at a dead end */
    static @Nullable Map<String, List<String>> of(PlanProblem problem, DayPlan when) {
        return new CrewByTurn(problem, when).deal();
    }

    private @Nullable Map<String, List<String>> deal() {
        List<List<Task>> bundles =
                bundles().stream().sorted(Comparator.comparingLong(this::first)).toList();
        // Those who can go on as before first: else whoever takes the place of one pushes out the next, and so on.
        bundles.forEach(this::asBefore);
        bundles.stream().filter(bundle -> !who.containsKey(bundle.get(0).id())).forEach(this::together);
        List<Task> others = problem.tasks().stream()
                .filter(task -> task.duration() > 0 && !task.people().isEmpty() && !who.containsKey(task.id()))
                .sorted(Comparator.comparingLong((Task task) -> when.start(task.id()))
                        .thenComparing(Task::id))
                .toList();
        for (Task task : others) {
            List<String> chosen = new ArrayList<>();
            for (int need = 0; need < task.people().size(); need++) {
                Person person = choose(List.of(task), need);
                if (person == null) {
                    return null;
                }
                take(person, task);
                chosen.add(person.id());
            }
            who.put(task.id(), chosen);
        }
        return who;
    }

    private long first(List<Task> bundle) {
        return bundle.stream().mapToLong(task -> when.start(task.id())).min().orElse(0);
    }

    /** Tasks of one person each that pairs join, directly or through others. */
    private List<List<Task>> bundles() {
        Map<String, Set<String>> joined = new TreeMap<>();
        for (Together pair : problem.together()) {
            if (isSingle(pair.first()) && isSingle(pair.second())) {
                Set<String> both = new LinkedHashSet<>(joined.getOrDefault(pair.first(), Set.of(pair.first())));
                both.addAll(joined.getOrDefault(pair.second(), Set.of(pair.second())));
                both.forEach(id -> joined.put(id, both));
            }
        }
        return new HashSet<>(joined.values())
                .stream()
                        .map(ids -> tasks.values().stream()
                                .filter(task -> ids.contains(task.id()))
                                .toList())
                        .sorted(Comparator.comparing(
                                (List<Task> bundle) -> bundle.get(0).id()))
                        .toList();
    }

    private boolean isSingle(String id) {
        Task task = tasks.get(id);
        return task != null && task.people().size() == 1 && task.duration() > 0;
    }

    private void asBefore(List<Task> bundle) {
        problem.people().stream()
                .filter(person -> asBefore(person, bundle) == bundle.size() && mayDo(person, bundle, 0))
                .findFirst()
                .ifPresent(person -> give(person, bundle));
    }

    private void together(List<Task> bundle) {
        give(choose(bundle, 0), bundle);
    }

    private void give(@Nullable Person person, List<Task> bundle) {
        boolean apart = bundle.stream()
                .allMatch(task -> bundle.stream().noneMatch(other -> other != task && overlap(task, other)));
        if (person != null && apart) {
            bundle.forEach(task -> {
                take(person, task);
                who.put(task.id(), List.of(person.id()));
            });
        }
    }

    private void take(Person person, Task task) {
        busy.computeIfAbsent(person.id(), none -> new ArrayList<>()).add(task);
    }

    /** Whoever does most of it in the plan in force, then the one who may do least else. */
    private @Nullable Person choose(List<Task> bundle, int need) {
        return problem.people().stream()
                .filter(person -> mayDo(person, bundle, need))
                .min(Comparator.comparingLong((Person person) -> -asBefore(person, bundle))
                        .thenComparing(person -> person.clearances().size())
                        .thenComparing(person ->
                                busy.getOrDefault(person.id(), List.of()).size())
                        .thenComparing(Person::id))
                .orElse(null);
    }

    private boolean mayDo(Person person, List<Task> bundle, int need) {
        return bundle.stream().allMatch(task -> task.people().get(need).mayBe(person) && isFree(person, task));
    }

    private boolean isFree(Person person, Task task) {
        return busy.getOrDefault(person.id(), List.of()).stream().noneMatch(other -> overlap(task, other));
    }

    private boolean overlap(Task one, Task other) {
        long start = when.start(one.id());
        long theirs = when.start(other.id());
        return theirs < start + one.duration() && start < theirs + other.duration();
    }

    private long asBefore(Person person, List<Task> bundle) {
        DayPlan inForce = problem.inForce();
        return inForce == null
                ? 0
                : bundle.stream()
                        .filter(task -> inForce.peopleOf(task.id()).contains(person.id()))
                        .count();
    }
}

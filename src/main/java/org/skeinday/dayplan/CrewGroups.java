package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * People who may do the same of what is asked, counted as one resource: then as many of them are busy as there are, and
 * fixed starts can always be dealt out among them (intervals of which at most k overlap fall into k rows).
 */
final class CrewGroups {
    private final PlanProblem problem;
    /** By what each may do: one of them, and how many there are. */
    private final Map<List<Boolean>, List<Person>> groups = new LinkedHashMap<>();

    private final Map<List<Boolean>, List<Integer>> intervals = new LinkedHashMap<>();

    CrewGroups(PlanProblem problem) {
        this.problem = problem;
        List<PersonNeed> asked = problem.tasks().stream()
                .flatMap(task -> task.people().stream())
                .distinct()
                .toList();
        for (Person person : new TreeMap<>(byName()).values()) {
            List<Boolean> may = asked.stream().map(need -> need.mayBe(person)).toList();
            groups.computeIfAbsent(may, none -> new ArrayList<>()).add(person);
        }
    }

    private Map<String, Person> byName() {
        Map<String, Person> map = new LinkedHashMap<>();
        problem.people().forEach(person -> map.put(person.id(), person));
        return map;
    }

    void into(PlanModel model) {
        for (Task task : problem.tasks()) {
            if (task.duration() > 0) {
                task.people().forEach(need -> place(model, task, need));
            }
        }
        intervals.forEach((group, which) -> model.sat.capacity(
                which,
                which.stream().map(one -> 1L).toList(),
                groups.getOrDefault(group, List.of()).size(),
                List.of()));
    }

    private void place(PlanModel model, Task task, PersonNeed need) {
        List<List<Boolean>> able = groups.entrySet().stream()
                .filter(group -> need.mayBe(group.getValue().get(0)))
                .map(Map.Entry::getKey)
                .toList();
        int start = model.start(task.id());
        if (able.size() == 1) {
            hold(able.get(0), model.sat.interval(start, task.duration()));
            return;
        }
        List<Integer> choices = new ArrayList<>();
        for (List<Boolean> group : able) {
            int choice = model.sat.choice();
            choices.add(choice);
            hold(group, model.sat.interval(start, task.duration(), choice));
        }
        model.sat.exactlyOne(choices);
    }

    private void hold(List<Boolean> group, int interval) {
        intervals.computeIfAbsent(group, none -> new ArrayList<>()).add(interval);
    }
}

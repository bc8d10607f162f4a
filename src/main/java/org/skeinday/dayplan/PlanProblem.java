package org.skeinday.dayplan;

import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What is to be planned.
 *
 * @param motorRest from the end of the task that takes a motor until it may be taken again; 0 where a motor is left out
 * @param inForce the plan people work by now; null before the first
 */
public record PlanProblem(
        List<Task> tasks,
        List<Resource> resources,
        List<Lag> lags,
        List<Person> people,
        SortedMap<String, Long> motorRest,
        List<Together> together,
        @Nullable DayPlan inForce) {
    public PlanProblem {
        tasks = List.copyOf(tasks);
        resources = List.copyOf(resources);
        lags = List.copyOf(lags);
        people = List.copyOf(people);
        together = List.copyOf(together);
        motorRest = Collections.unmodifiableSortedMap(new TreeMap<>(motorRest));
        Set<String> ids = different("task", tasks, Task::id);
        Set<String> places = different("resource", resources, Resource::id);
        different("lag", lags, Lag::id);
        Set<String> persons = different("person", people, Person::id);
        for (Task task : tasks) {
            task.needs().keySet().forEach(need -> known(task.id() + " needs a resource", need, places));
            for (PersonNeed need : task.people()) {
                known(task.id() + " needs a person", need.person(), persons);
            }
        }
        for (Lag lag : lags) {
            known("The lag " + lag.id() + " starts at a task", lag.from(), ids);
            known("The lag " + lag.id() + " leads to a task", lag.to(), ids);
        }
        for (Together pair : together) {
            known("A pair for one person has a task", pair.first(), ids);
            known("A pair for one person has a task", pair.second(), ids);
        }
        for (var rest : motorRest.entrySet()) {
            PlanTime.span("The rest of " + rest.getKey(), rest.getValue());
        }
    }

    private static <T> Set<String> different(String what, Collection<T> all, Function<T, String> id) {
        Set<String> seen = new HashSet<>();
        for (T one : all) {
            if (!seen.add(id.apply(one))) {
                throw new IllegalArgumentException(
                        "Each " + what + " must have a name of its own, but two are called " + id.apply(one));
            }
        }
        return seen;
    }

    private static void known(String what, @Nullable String name, Set<String> names) {
        if (name != null && !names.contains(name)) {
            throw new IllegalArgumentException(what + " that must be there, but " + name + " is not");
        }
    }

    public static PlanProblem of(List<Task> tasks, List<Resource> resources, List<Lag> lags) {
        return new PlanProblem(tasks, resources, lags, List.of(), new TreeMap<>(), List.of(), null);
    }

    public PlanProblem withPeople(List<Person> crew, List<Together> pairs) {
        return new PlanProblem(tasks, resources, lags, crew, motorRest, pairs, inForce);
    }

    public PlanProblem withMotorRest(Map<String, Long> rest) {
        return new PlanProblem(tasks, resources, lags, people, new TreeMap<>(rest), together, inForce);
    }

    public PlanProblem withInForce(@Nullable DayPlan plan) {
        return new PlanProblem(tasks, resources, lags, people, motorRest, together, plan);
    }

    public PlanProblem withTasks(List<Task> others) {
        return new PlanProblem(others, resources, lags, people, motorRest, together, inForce);
    }

    PlanProblem withLags(List<Lag> others) {
        return new PlanProblem(tasks, resources, others, people, motorRest, together, inForce);
    }

    PlanProblem withResources(List<Resource> others) {
        return new PlanProblem(tasks, others, lags, people, motorRest, together, inForce);
    }

    /** @return these tasks and what lies between them */
    PlanProblem part(Set<String> ids) {
        return new PlanProblem(
                tasks.stream().filter(task -> ids.contains(task.id())).toList(),
                resources,
                lags.stream()
                        .filter(lag -> ids.contains(lag.from()) && ids.contains(lag.to()))
                        .toList(),
                people,
                motorRest,
                together.stream()
                        .filter(pair -> ids.contains(pair.first()) && ids.contains(pair.second()))
                        .toList(),
                inForce);
    }

    Map<String, Task> byId() {
        Map<String, Task> map = new LinkedHashMap<>();
        tasks.forEach(task -> map.put(task.id(), task));
        return map;
    }

    long restOf(String motor) {
        return motorRest.getOrDefault(motor, 0L);
    }
}

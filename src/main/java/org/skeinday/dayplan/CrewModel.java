package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** Who does what, once it is known when: as few hand-overs as can be, then as little change as can be. */
final class CrewModel {
    private final CpSat sat = CpSat.model();
    private final PlanProblem problem;
    private final DayPlan when;
    /** By task, for each need: the choice by person. */
    private final Map<String, List<Map<String, Integer>>> who = new LinkedHashMap<>();

    /** A choice to be in a task, from its start until its end. */
    private record Turn(long from, long until, int choice) {}

    private final Map<String, List<Turn>> turns = new TreeMap<>();

    private CrewModel(PlanProblem problem, DayPlan when) {
        this.problem = problem;
        this.when = when;
    }

    /** @param when keeps the counts of {@link CrewGroups}, so that somebody is found for everything */
    static Staffed staff(PlanProblem problem, DayPlan when, double work) {
        if (problem.tasks().stream().allMatch(task -> task.people().isEmpty())) {
            return new Staffed(when, 0);
        }
        DayPlan inForce = problem.inForce();
        if (inForce != null && when.equals(inForce) && Figures.handOvers(problem, inForce) == 0) {
            return new Staffed(inForce, 0);
        }
        CrewModel model = new CrewModel(problem, when);
        Map<String, List<String>> dealt = CrewByTurn.of(problem, when);
        if (dealt == null) {
            return model.solve(Effort.UNTIL_SURE, Map.of());
        }
        DayPlan byTurn = model.with(new TreeMap<>(dealt));
        boolean same = inForce == null || inForce.people().equals(byTurn.people());
        boolean best = same && Figures.handOvers(problem, byTurn) == 0;
        return best ? new Staffed(byTurn, 0) : model.solve(work, dealt);
    }

    /** @param seconds the solver took */
    record Staffed(DayPlan plan, double seconds) {}

    /** @param dealt a first answer; empty when there is none yet */
    private Staffed solve(double work, Map<String, List<String>> dealt) {
        for (Task task : problem.tasks()) {
            if (task.duration() > 0 && !task.people().isEmpty()) {
                place(task);
            }
        }
        turns.values().forEach(this::oneAtATime);
        long change = 1
                + problem.tasks().stream()
                        .mapToLong(task -> task.people().size())
                        .sum();
        Sum cost = new Sum();
        problem.together().forEach(pair -> handOver(pair, change, cost));
        changes(cost);
        if (!cost.isEmpty()) {
            sat.minimise(cost);
        }
        lookFirstAt(dealt);
        CpSat.Answer answer = sat.solve(work);
        if (!answer.found() && !dealt.isEmpty()) {
            return new Staffed(with(new TreeMap<>(dealt)), answer.seconds());
        }
        return new Staffed(read(answer), answer.seconds());
    }

    private void lookFirstAt(Map<String, List<String>> dealt) {
        who.forEach((task, needs) -> {
            List<String> there = dealt.getOrDefault(task, List.of());
            for (int i = 0; i < there.size(); i++) {
                String person = there.get(i);
                needs.get(i).forEach((other, choice) -> sat.hint(choice, other.equals(person) ? 1 : 0));
            }
        });
    }

    private void place(Task task) {
        long start = when.start(task.id());
        List<Map<String, Integer>> needs = new ArrayList<>();
        for (PersonNeed need : task.people()) {
            Map<String, Integer> choices = new TreeMap<>();
            for (Person person : problem.people()) {
                if (need.mayBe(person)) {
                    int choice = sat.choice();
                    choices.put(person.id(), choice);
                    turns.computeIfAbsent(person.id(), none -> new ArrayList<>())
                            .add(new Turn(start, start + task.duration(), choice));
                }
            }
            sat.exactlyOne(List.copyOf(choices.values()));
            needs.add(choices);
        }
        who.put(task.id(), needs);
    }

    /** Starts are known: it is enough that at each start of one at most one runs. */
    private void oneAtATime(List<Turn> mine) {
        for (Turn at : mine) {
            List<Integer> running = mine.stream()
                    .filter(turn -> turn.from() <= at.from() && at.from() < turn.until())
                    .map(Turn::choice)
                    .toList();
            if (running.size() > 1) {
                sat.atMostOne(running);
            }
        }
    }

    private void handOver(Together pair, long weight, Sum cost) {
        int over = sat.choice();
        Map<String, Sum> first = inIt(pair.first());
        inIt(pair.second()).forEach((person, inSecond) -> {
            Sum newcomer = first.getOrDefault(person, new Sum()).plus(over, 1);
            sat.atLeast(newcomer.minus(inSecond), 0);
        });
        cost.plus(over, weight);
    }

    /** By person: whether in the task, whatever the need. */
    private Map<String, Sum> inIt(String task) {
        Map<String, Sum> found = new TreeMap<>();
        who.getOrDefault(task, List.of())
                .forEach(need -> need.forEach((person, choice) ->
                        found.computeIfAbsent(person, none -> new Sum()).plus(choice, 1)));
        return found;
    }

    private void changes(Sum cost) {
        DayPlan inForce = problem.inForce();
        if (inForce == null) {
            return;
        }
        who.forEach((task, needs) -> {
            List<String> before = inForce.peopleOf(task);
            for (int i = 0; i < Math.min(needs.size(), before.size()); i++) {
                String person = before.get(i);
                needs.get(i).forEach((other, choice) -> {
                    if (!other.equals(person)) {
                        cost.plus(choice, 1);
                    }
                });
            }
        });
    }

    private DayPlan read(CpSat.Answer answer) {
        if (!answer.found()) {
            throw new IllegalStateException(
                    "Somebody must be found for every task, but the answer was " + answer.verdict());
        }
        var people = new TreeMap<String, List<String>>();
        who.forEach((task, needs) -> people.put(
                task,
                needs.stream()
                        .map(need -> need.entrySet().stream()
                                .filter(choice -> answer.values().get(choice.getValue()) == 1)
                                .map(Map.Entry::getKey)
                                .findFirst()
                                .orElseThrow())
                        .toList()));
        return with(people);
    }

    private DayPlan with(SortedMap<String, List<String>> people) {
        return new DayPlan(when.starts(), people, when.motors());
    }
}

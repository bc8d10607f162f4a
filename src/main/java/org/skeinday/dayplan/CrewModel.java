package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Who does what beside when it starts: each person is told apart here. That is too large for a whole day, so that only
 * some tasks may move and all others stay where a plan has them.
 */
final class CrewModel {
    private final PlanProblem problem;
    final PlanModel when;
    /** By task, for each need: the choice by person. */
    private final Map<String, List<Map<String, Integer>>> who = new LinkedHashMap<>();

    private final Map<String, List<Integer>> turns = new TreeMap<>();

    private CrewModel(PlanProblem problem) {
        this.problem = problem;
        this.when = PlanModel.of(problem, Relaxation.NOTHING);
    }

    /** @param plan where all but {@code moving} stay, with their motors */
    static CrewModel of(PlanProblem problem, DayPlan plan, Set<String> moving) {
        CrewModel model = new CrewModel(problem);
        model.when.hold(plan, moving);
        for (Task task : problem.tasks()) {
            if (task.duration() > 0 && !task.people().isEmpty()) {
                model.place(task);
            }
        }
        model.turns.values().forEach(model.when.sat::oneAtATime);
        return model;
    }

    private void place(Task task) {
        List<Map<String, Integer>> needs = new ArrayList<>();
        for (PersonNeed need : task.people()) {
            Map<String, Integer> choices = new TreeMap<>();
            for (Person person : problem.people()) {
                if (need.mayBe(person)) {
                    int choice = when.sat.choice();
                    choices.put(person.id(), choice);
                    turns.computeIfAbsent(person.id(), none -> new ArrayList<>())
                            .add(when.sat.interval(when.start(task.id()), task.duration(), choice));
                }
            }
            when.sat.exactlyOne(List.copyOf(choices.values()));
            needs.add(choices);
        }
        who.put(task.id(), needs);
    }

    /** One for each pair whose second task has somebody who is not in the first. */
    Sum handOvers() {
        Sum sum = new Sum();
        for (Together pair : problem.together()) {
            Map<String, Sum> first = inIt(pair.first());
            if (first.isEmpty()) {
                continue;
            }
            int over = when.sat.choice();
            inIt(pair.second()).forEach((person, inSecond) -> {
                Sum newcomer = first.getOrDefault(person, new Sum()).plus(over, 1);
                when.sat.atLeast(newcomer.minus(inSecond), 0);
            });
            sum.plus(over, 1);
        }
        return sum;
    }

    /** By person: whether in the task, whatever the need. */
    private Map<String, Sum> inIt(String task) {
        Map<String, Sum> found = new TreeMap<>();
        who.getOrDefault(task, List.of())
                .forEach(need -> need.forEach((person, choice) ->
                        found.computeIfAbsent(person, none -> new Sum()).plus(choice, 1)));
        return found;
    }

    /** As {@link Figures#change} counts. */
    Sum change() {
        Sum sum = when.costs().change();
        DayPlan inForce = problem.inForce();
        if (inForce != null) {
            who.forEach((task, needs) -> otherPeople(needs, inForce.peopleOf(task), sum));
        }
        return sum;
    }

    private static void otherPeople(List<Map<String, Integer>> needs, List<String> before, Sum sum) {
        for (int i = 0; i < Math.min(needs.size(), before.size()); i++) {
            String person = before.get(i);
            needs.get(i).forEach((other, choice) -> {
                if (!other.equals(person)) {
                    sum.plus(choice, 1);
                }
            });
        }
    }

    void lookFirstAt(DayPlan plan) {
        when.lookFirstAt(plan);
        who.forEach((task, needs) -> {
            List<String> there = plan.peopleOf(task);
            for (int i = 0; i < there.size(); i++) {
                String person = there.get(i);
                needs.get(i).forEach((other, choice) -> when.sat.hint(choice, other.equals(person) ? 1 : 0));
            }
        });
    }

    DayPlan read(CpSat.Answer answer) {
        var people = new TreeMap<String, List<String>>();
        who.forEach((task, needs) -> people.put(
                task, needs.stream().map(need -> chosen(need, answer)).toList()));
        return when.read(answer).withPeople(people);
    }

    private static String chosen(Map<String, Integer> need, CpSat.Answer answer) {
        return need.entrySet().stream()
                .filter(choice -> answer.values().get(choice.getValue()) == 1)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }
}

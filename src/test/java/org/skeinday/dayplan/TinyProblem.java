package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;

/** Problems small enough to try everything, with some of everything in them; often, not always, they have a plan. */
final class TinyProblem {
    static final long LAST_START = 9;

    private TinyProblem() {}

    static PlanProblem of(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Task> tasks = new ArrayList<>();
        int count = 3 + random.nextInt(2);
        for (int i = 0; i < count; i++) {
            tasks.add(task(random, i));
        }
        List<Resource> resources = List.of(new Resource("station", 1 + random.nextInt(2)), new Resource("lane", 1));
        List<Person> crew = List.of(
                Person.cleared("one", Set.of("winds", "loads")),
                Person.cleared("two", Set.of("loads")),
                Person.cleared("three", random.nextBoolean() ? Set.of("winds") : Set.of("loads")));
        return PlanProblem.of(tasks, resources, lags(random, count))
                .withPeople(crew, List.of(new Together("t0", "t1")))
                .withMotorRest(Map.of("m1", 1L));
    }

    /** With a soft lag, and one more person need so that hand-overs are at stake. */
    static PlanProblem withWishes(long seed) {
        PlanProblem problem = of(seed);
        SplittableRandom random = new SplittableRandom(seed + 1000);
        List<Task> tasks = problem.tasks().stream()
                .map(task ->
                        Set.of("t0", "t1").contains(task.id()) && task.people().isEmpty()
                                ? task.needingPerson(PersonNeed.anyone("loads"))
                                : task)
                .toList();
        List<Lag> lags = new ArrayList<>(problem.lags());
        lags.add(Lag.preferred("t0", "t2", 0L, (long) random.nextInt(3), 1 + random.nextInt(2)));
        return problem.withTasks(tasks).withLags(lags);
    }

    /** The plan with its people turned round and its starts moved a little: it need not hold. */
    static DayPlan shuffled(PlanProblem problem, DayPlan plan, long seed) {
        SplittableRandom random = new SplittableRandom(seed + 2000);
        TreeMap<String, Long> starts = new TreeMap<>();
        plan.starts().forEach((id, start) -> starts.put(id, start + random.nextInt(3)));
        TreeMap<String, List<String>> people = new TreeMap<>();
        plan.people()
                .keySet()
                .forEach(id -> people.put(
                        id,
                        List.of(problem.people()
                                .get(random.nextInt(problem.people().size()))
                                .id())));
        return new DayPlan(starts, people, plan.motors());
    }

    private static Task task(SplittableRandom random, int i) {
        Task task = Task.of("t" + i, random.nextInt(4));
        long earliest = random.nextInt(3);
        // No later than the last start that is tried, so that trying finds the best.
        task = task.within(earliest, earliest + task.duration() + random.nextInt(7));
        if (random.nextInt(3) > 0) {
            task = task.needing("station", 1);
        }
        if (random.nextInt(3) == 0) {
            task = task.needing("lane", 1);
        }
        if (random.nextInt(3) == 0) {
            task = task.needingPerson(PersonNeed.anyone(random.nextBoolean() ? "winds" : "loads"));
        }
        if (random.nextInt(4) == 0) {
            task = task.takingOneOf(random.nextBoolean() ? Map.of("m1", 0) : new TreeMap<>(Map.of("m1", 0, "m2", 3)));
        }
        return random.nextInt(6) == 0 ? task.fixedAt(earliest + random.nextInt(2)) : task;
    }

    private static List<Lag> lags(SplittableRandom random, int count) {
        List<Lag> lags = new ArrayList<>();
        Set<String> named = new HashSet<>();
        for (int n = random.nextInt(3); n > 0; n--) {
            int from = random.nextInt(count);
            int to = (from + 1 + random.nextInt(count - 1)) % count;
            long min = random.nextInt(4) - 1;
            Lag lag = Lag.between(
                    "t" + from, "t" + to, min, random.nextBoolean() ? (Long) (min + random.nextInt(3)) : null);
            if (named.add(lag.id())) {
                lags.add(lag);
            }
        }
        return lags;
    }
}

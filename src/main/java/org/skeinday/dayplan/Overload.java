package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/**
 * More work than there is room for: whatever the plan, tasks hold so much of something between two times (energetic
 * reasoning; Baptiste, Le Pape and Nuijten 2001, memory).
 *
 * @param what the resource or clearance
 * @param capacity how many there are of it
 * @param work the least that is held between the two times: units times steps, more than {@link #room}
 * @param tasks that hold it there
 */
record Overload(Requirement what, long capacity, long from, long until, long work, Set<String> tasks) {
    long room() {
        return capacity * (until - from);
    }

    /** @return of those that counting shows the one with the fewest tasks; null when it shows none */
    static @Nullable Overload of(PlanProblem problem, StartBounds reach) {
        Overload fewest = null;
        for (Held held : helds(problem, reach)) {
            Overload found = held.overload(false);
            if (found != null
                    && (fewest == null || found.tasks().size() < fewest.tasks().size())) {
                fewest = found;
            }
        }
        return fewest;
    }

    /** The first that is found: quicker where nothing but whether there is one is asked. */
    static boolean isIn(PlanProblem problem, StartBounds reach) {
        return helds(problem, reach).stream().anyMatch(held -> held.overload(true) != null);
    }

    private static List<Held> helds(PlanProblem problem, StartBounds reach) {
        List<Held> all = new ArrayList<>();
        for (Resource resource : problem.resources()) {
            ToIntFunction<Task> amount = task -> task.needs().getOrDefault(resource.id(), 0);
            var what = new Requirement(Requirement.Kind.RESOURCE, resource.id());
            all.add(new Held(what, resource.capacity(), pieces(problem, reach, amount)));
        }
        for (String clearance : PersonNeed.clearances(problem.tasks())) {
            ToIntFunction<Task> amount = task -> (int) task.people().stream()
                    .filter(need -> clearance.equals(need.clearance()))
                    .count();
            long able = problem.people().stream()
                    .filter(person -> person.clearances().contains(clearance))
                    .count();
            var what = new Requirement(Requirement.Kind.CLEARANCE, clearance);
            all.add(new Held(what, able, pieces(problem, reach, amount)));
        }
        return all;
    }

    private static List<Piece> pieces(PlanProblem problem, StartBounds reach, ToIntFunction<Task> amount) {
        List<Piece> pieces = new ArrayList<>();
        for (Task task : problem.tasks()) {
            OptionalLong latest = reach.latest(task.id());
            int wanted = amount.applyAsInt(task);
            if (latest.isPresent() && wanted > 0 && task.duration() > 0) {
                long earliest = Objects.requireNonNull(reach.earliest().get(task.id()));
                pieces.add(new Piece(task.id(), earliest, latest.getAsLong(), task.duration(), wanted));
            }
        }
        return pieces;
    }

    /** A task inside its reach: it starts from {@code earliest} to {@code latest}. */
    private record Piece(String task, long earliest, long latest, long duration, long amount) {
        /** The least that it holds between two times, however it is placed. */
        long least(long from, long until) {
            long early = Math.max(0, earliest + duration - from);
            long late = Math.max(0, until - latest);
            return amount * Math.min(Math.min(early, late), Math.min(duration, until - from));
        }
    }

    /** All that hold one thing. */
    private record Held(Requirement what, long capacity, List<Piece> pieces) {
        @Nullable
        Overload overload(boolean first) {
            long[] from = pieces.stream().mapToLong(Piece::earliest).distinct().toArray();
            long[] until = pieces.stream()
                    .mapToLong(one -> one.latest() + one.duration())
                    .distinct()
                    .toArray();
            Overload fewest = null;
            for (long start : from) {
                for (long end : until) {
                    long work = end > start ? work(start, end) : 0;
                    if (end > start && work > capacity * (end - start)) {
                        if (fewest == null || count(start, end) < fewest.tasks().size()) {
                            fewest = new Overload(what, capacity, start, end, work, tasks(start, end));
                        }
                        if (first) {
                            return fewest;
                        }
                    }
                }
            }
            return fewest;
        }

        private long work(long from, long until) {
            long sum = 0;
            for (Piece one : pieces) {
                sum += one.least(from, until);
            }
            return sum;
        }

        private int count(long from, long until) {
            int count = 0;
            for (Piece one : pieces) {
                count += one.least(from, until) > 0 ? 1 : 0;
            }
            return count;
        }

        private Set<String> tasks(long from, long until) {
            Set<String> tasks = new TreeSet<>();
            pieces.stream().filter(one -> one.least(from, until) > 0).forEach(one -> tasks.add(one.task()));
            return tasks;
        }
    }
}

package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OverfullTest {
    /** Windings of 4 on two stations, all from 10 until 20: five of them fit by counting, but only four in fact. */
    private static PlanProblem windings(int count) {
        List<Task> tasks = new ArrayList<>();
        List<Lag> lags = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            tasks.add(Task.of("wind " + i, 4).needing("station", 1).within(10L, null));
            tasks.add(Task.of("fly " + i, 3).within(null, 23L));
            lags.add(Lag.between("wind " + i, "fly " + i, 4L, 6L));
        }
        tasks.add(Task.of("elsewhere", 5).within(null, 40L));
        return PlanProblem.of(tasks, List.of(new Resource("station", 2)), lags);
    }

    @Test
    void counting_finds_what_is_too_much_through_lags_and_leaves_the_rest_aside() {
        assertEquals(Set.of("wind 0", "wind 1", "wind 2", "wind 3", "wind 4", "wind 5"), Overfull.counted(windings(6)));
        PlanProblem part = Overfull.countedPart(windings(6));
        assertEquals(12, part.tasks().size());
        assertEquals(
                Outcome.Status.INFEASIBLE,
                Planner.plan(part, Goal.SLACK, Effort.live()).status());
    }

    @Test
    void counting_does_not_find_what_only_a_search_can() {
        assertEquals(Set.of(), Overfull.counted(windings(4)));
        assertNull(Overfull.countedPart(windings(5)), "5 times 4 is no more than 2 times 10");
        assertEquals(
                Outcome.Status.INFEASIBLE,
                Planner.plan(windings(5), Goal.SLACK, Effort.live()).status());
    }

    @Test
    void people_who_are_cleared_are_counted_like_places() {
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            tasks.add(Task.of("t" + i, 4)
                    .needingPerson(PersonNeed.anyone("winds"))
                    .within(0L, 11L));
        }
        PlanProblem people = PlanProblem.of(tasks, List.of(), List.of())
                .withPeople(List.of(Person.cleared("kim", Set.of("winds"))), List.of());
        assertEquals(Set.of("t0", "t1", "t2"), Overfull.counted(people));
        assertEquals(Set.of(), Overfull.counted(people.withTasks(tasks.subList(0, 2))));
    }

    @Test
    void a_search_that_gives_up_at_once_is_helped_by_a_part_and_says_nothing_where_there_is_a_plan() {
        Conflict conflict = Conflict.ofPart(windings(6), Effort.live()).orElseThrow();
        assertEquals(true, conflict.irreducible());
        List<WayOut> ways = WaysOut.of(windings(6), conflict.requirements(), Effort.live());
        assertNotNull(ways.get(0));
        for (WayOut way : ways) {
            assertEquals(
                    Outcome.Status.OPTIMAL,
                    Planner.plan(WaysOut.taken(windings(6), way), Goal.SLACK, Effort.live())
                            .status());
        }
        assertEquals(true, Conflict.ofPart(windings(4), Effort.live()).isEmpty());
    }

    /** Counting must never find too much in what can be planned. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24})
    void what_is_counted_as_too_much_has_no_plan(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        if (!Overfull.counted(problem).isEmpty()) {
            assertEquals(false, BruteForce.possible(problem, TinyProblem.LAST_START), "seed " + seed);
        }
    }
}

package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

    @Test
    void the_sum_that_does_not_come_out_is_said_first() {
        PlanProblem six = windings(6);
        Outcome outcome = Planner.plan(six, Goal.SLACK, Effort.live());
        assertTrue(outcome.irreducible());
        assertEquals(
                "from 10 to 20, 6 tasks need 24 of station in all, but there is room for 20 (2 at a time)",
                WhyNot.inShort(six, outcome.conflict(), TimeWords.NUMBERS).get(0));
    }

    /** By hand: released at 585 at the earliest, run back from 735 to 855, prepared until 1155, released 285 later. */
    @Test
    void an_entry_that_has_no_time_is_named_alone_among_sixty_in_a_line_for_each_task() {
        List<AttemptAhead> day = new ArrayList<>();
        for (int e = 0; e < 60; e++) {
            long closes = e == 7 ? 300 + 1139 : 9_000 + 700L * e;
            day.add(AttemptAhead.of("E" + e, 1, 300L, closes, Map.of()));
            day.add(AttemptAhead.of("E" + e, 2, 300L, closes, Map.of()));
        }
        EventSetting setting = EventSetting.smallest().with(5, 3, 6, 2);
        PlanProblem problem = EventChains.of(day, Map.of(), setting, 0, null);
        Outcome outcome = Planner.plan(problem, Goal.SLACK, Effort.live());
        assertEquals(Outcome.Status.INFEASIBLE, outcome.status());
        assertTrue(outcome.irreducible());
        List<String> lines = WhyNot.inShort(problem, outcome.conflict(), TimeWords.NUMBERS);
        assertEquals("E7 2 fly can start at 1440 at the earliest, but has to by 1439", lines.get(0));
        assertEquals(9, lines.size(), lines::toString);
        assertTrue(lines.stream().allMatch(line -> line.startsWith("E7")), lines::toString);
        List<String> ways = WaysOut.of(problem, outcome.conflict(), Effort.live()).stream()
                .map(way -> way.words(problem, TimeWords.NUMBERS))
                .toList();
        assertTrue(ways.contains("leave out attempt 2 of E7"), ways::toString);
        assertTrue(ways.stream().noneMatch(way -> way.contains("->")), ways::toString);
    }

    @Test
    void a_long_conflict_is_told_by_attempts() {
        List<AttemptAhead> day = new ArrayList<>();
        for (int e = 0; e < 12; e++) {
            day.add(AttemptAhead.of("E" + e, 1, 300L, 1500L, Map.of()));
        }
        PlanProblem problem = EventChains.of(day, Map.of(), EventSetting.smallest(), 0, null);
        Outcome outcome = Planner.plan(problem, Goal.SLACK, Effort.live());
        List<String> lines = WhyNot.inShort(problem, outcome.conflict(), TimeWords.NUMBERS);
        assertTrue(lines.get(0).contains("in all, but there is room for"), lines::toString);
        assertTrue(lines.get(1).contains("attempt 1 of E"), lines::toString);
        assertEquals(3, lines.size(), lines::toString);
    }

    @Test
    void attempts_are_given_up_where_it_is_too_much_and_nowhere_else() {
        AttemptAhead narrow = AttemptAhead.of("A", 2, 300L, 300L + 1139, Map.of());
        AttemptAhead wide = AttemptAhead.of("Z", 2, 300L, 90_000L, Map.of());
        Scenario day = new Scenario(
                List.of(
                        AttemptAhead.of("A", 1, 300L, 300L + 1139, Map.of()),
                        narrow,
                        AttemptAhead.of("Z", 1, 300L, 90_000L, Map.of()),
                        wide),
                Map.of(),
                EventSetting.smallest().with(2, 2, 2, 1),
                ParallelTasks.NOTHING);
        Proposed proposed = Proposed.of(day, 0, null, Effort.live(), TimeWords.NUMBERS);
        assertEquals(List.of("A 2"), proposed.leftOut());
        assertNotNull(proposed.outcome().plan());
    }

    @Test
    void what_follows_an_attempt_that_is_left_out_still_follows_the_one_before() {
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            tasks.add(Task.of("t" + i, 4).inChain("c" + i).within(null, i == 2 ? 9L : 30L));
        }
        PlanProblem problem = PlanProblem.of(
                tasks, List.of(), List.of(Lag.between("t0", "t1", 4L, null), Lag.between("t1", "t2", 4L, null)));
        PlanProblem after = WaysOut.taken(problem, new WayOut(WayOut.Kind.LEAVE_OUT, Map.of("t1", 1L)));
        assertEquals(List.of(Lag.between("t0", "t2", 4L, null)), after.lags());
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

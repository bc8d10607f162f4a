package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Two attempts that share a lane: a winds and flies, then b flies. */
class InHandTest {
    private static final PlanProblem PROBLEM = PlanProblem.of(
            List.of(
                    Task.of("a wind", 4),
                    Task.of("a fly", 3).needing("lane", 1).within(null, 30L),
                    Task.of("b fly", 5).needing("lane", 1).within(2L, 20L),
                    Task.of("tidy", 9)),
            List.of(new Resource("lane", 1)),
            List.of(Lag.between("a wind", "a fly", 4L, 6L)));

    private static final DayPlan PLAN = DayPlan.ofStarts(Map.of("a wind", 0L, "a fly", 4L, "b fly", 7L, "tidy", 0L));

    @Test
    void the_latest_safe_start_looks_through_the_lane_to_the_next_window() {
        InHand inHand = InHand.of(PROBLEM, PLAN);
        assertEquals(15, inHand.latestSafeStart("b fly").orElseThrow(), "its own window closes at 20");
        assertEquals(12, inHand.latestSafeStart("a fly").orElseThrow(), "not 27: b waits for the lane");
        assertEquals(8, inHand.latestSafeStart("a wind").orElseThrow(), "winding takes 4");
        assertEquals(8, inHand.timeInHand("a wind").orElseThrow());
        assertFalse(inHand.timeInHand("tidy").isPresent(), "nothing waits for it");
    }

    @Test
    void a_longest_lag_carries_a_window_forward_and_a_fixed_task_holds_back() {
        PlanProblem problem = PlanProblem.of(
                List.of(
                        Task.of("wind", 4).within(null, 10L),
                        Task.of("fly", 2),
                        Task.of("show", 1).fixedAt(12L)),
                List.of(),
                List.of(Lag.between("wind", "fly", 4L, 5L), Lag.between("fly", "show", 2L, null)));
        InHand inHand = InHand.of(problem, DayPlan.ofStarts(Map.of("wind", 0L, "fly", 4L, "show", 12L)));
        assertEquals(10, inHand.latestSafeStart("fly").orElseThrow(), "the show is fixed at 12");
        assertEquals(6, inHand.latestSafeStart("wind").orElseThrow());
        Lag back = Lag.between("fly", "wind", null, -4L);
        assertEquals(
                10,
                InHand.of(
                                problem.withLags(List.of(back, Lag.between("fly", "show", 2L, null))),
                                DayPlan.ofStarts(Map.of("wind", 0L, "fly", 4L, "show", 12L)))
                        .latestSafeStart("fly")
                        .orElseThrow());
    }

    @Test
    void what_holds_us_up_is_told_back_to_where_nothing_waits() {
        assertEquals(
                List.of(
                        new HoldUp("b fly", StartReason.HELD, "a fly", "waits for lane, held by a fly"),
                        new HoldUp("a fly", StartReason.FOLLOWS, "a wind", "follows a wind")),
                HoldUp.ofTheTightest(PROBLEM, PLAN));
        PlanProblem late = PROBLEM.withTasks(PROBLEM.tasks().stream()
                .map(task -> task.id().equals("a wind") ? task.fixedAt(0L) : task)
                .toList());
        assertEquals(
                new HoldUp("a wind", StartReason.FIXED, "", "is fixed at 0"),
                HoldUp.of(late, PLAN, "b fly").get(2));
        assertEquals(
                List.of(new HoldUp("b fly", StartReason.NOT_BEFORE, "", "must not start before 2")),
                HoldUp.of(
                        PROBLEM,
                        DayPlan.ofStarts(Map.of("a wind", 8L, "a fly", 12L, "b fly", 2L, "tidy", 0L)),
                        "b fly"));
    }

    @Test
    void units_of_a_larger_place_are_handed_on_one_by_one() {
        List<Task> tasks = List.of(
                Task.of("x", 2).needing("station", 1),
                Task.of("y", 9).needing("station", 1),
                Task.of("z", 2).needing("station", 1).within(null, 6L));
        PlanProblem problem = PlanProblem.of(tasks, List.of(new Resource("station", 2)), List.of());
        InHand inHand = InHand.of(problem, DayPlan.ofStarts(Map.of("x", 0L, "y", 0L, "z", 2L)));
        assertEquals(2, inHand.latestSafeStart("x").orElseThrow(), "z takes over from x");
        assertFalse(inHand.latestSafeStart("y").isPresent(), "y may go on beside z");
    }
}

package org.skeinday.dayplan;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The sum behind a conflict that does not come out, in one sentence. */
final class Reason {
    private Reason() {}

    /** @return empty where only a search shows that it conflicts */
    static Optional<String> of(PlanProblem problem, List<Requirement> conflict, TimeWords words) {
        return of(Conflict.only(problem, conflict), words).or(() -> of(problem, words));
    }

    /** The conflict may be smaller than any sum shows: then the day's own sum tells more. */
    private static Optional<String> of(PlanProblem part, TimeWords words) {
        StartBounds reach = StartBounds.of(part);
        Task late = reach.tooLate(part);
        if (late != null) {
            return Optional.of(late(late, reach, words));
        }
        return Optional.ofNullable(Overload.of(part, reach)).map(overload -> tooMuch(overload, words));
    }

    private static String late(Task task, StartBounds reach, TimeWords words) {
        long earliest = Objects.requireNonNull(reach.earliest().get(task.id()));
        long latest = reach.latest(task.id()).orElseThrow();
        return task.id() + " can start at " + words.at(earliest) + " at the earliest, but has to by "
                + words.at(latest);
    }

    private static String tooMuch(Overload overload, TimeWords words) {
        String what = overload.what().kind() == Requirement.Kind.CLEARANCE
                ? "people cleared for " + overload.what().id()
                : overload.what().id();
        return "from " + words.at(overload.from()) + " to " + words.at(overload.until()) + ", "
                + overload.tasks().size() + " tasks need " + words.lasting(overload.work()) + " of " + what
                + " in all, but there is room for " + words.lasting(overload.room()) + " (" + overload.capacity()
                + " at a time)";
    }
}

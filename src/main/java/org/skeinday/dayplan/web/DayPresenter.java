package org.skeinday.dayplan.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.dayplan.DayPlan;
import org.skeinday.dayplan.HoldUp;
import org.skeinday.dayplan.InHand;
import org.skeinday.dayplan.PartTask;
import org.skeinday.dayplan.PlanDeviations;
import org.skeinday.dayplan.PlanProblem;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Scenario;
import org.skeinday.dayplan.Slip;
import org.skeinday.dayplan.Task;
import org.skeinday.platform.http.Apart;

/** Makes the day's page: the plan in force as it stands now, and what a proposal would change. */
final class DayPresenter {
    private final DayNow day;
    private final DayWords words;
    private final DayChoices choices;
    private final long nowMs;

    /** @param nameOf display name of a person's id */
    DayPresenter(DayNow day, UnaryOperator<String> nameOf, ZoneId zone, long nowMs) {
        this.day = day;
        this.words = new DayWords(day, nameOf, zone);
        this.choices = new DayChoices(day, words);
        this.nowMs = nowMs;
    }

    /** @param person whose own list is shown, empty for nobody */
    DayView view(String person, DayView.HandIn handIn, boolean mayAct) {
        PlanTaken taken = day.taken();
        if (day.day().attempts().isEmpty()) {
            String none = day.isOnlyOthers()
                    ? "No entry is marked as your own: Prepare, Entries, Own."
                    : "Every own entry has had its attempts, or there is none yet.";
            return empty(none, handIn, mayAct);
        }
        if (taken == null) {
            return empty(
                    mayAct
                            ? "There is no plan yet. Ask for one: it is computed in a second, and yours to take or leave."
                            : "There is no plan yet: the captain makes one.",
                    handIn,
                    mayAct);
        }
        PlanProblem problem = problem(day.asTaken(), day.now());
        Slip slip = Slip.of(problem);
        DayPlan goesOn = slip.goesOn();
        DayPlan shown = goesOn == null ? Objects.requireNonNull(day.inForce()) : goesOn;
        List<PlanTaken.Planned> tasks = goesOn == null ? taken.tasks() : planned(problem, goesOn);
        List<String> missing = new ArrayList<>();
        DayView.@Nullable Bands bands = Apart.made("The bands", () -> bands(tasks, finding(problem, goesOn)), words -> {
            missing.add(" · " + words);
            return null;
        });
        PlanTablePresenter rows = new PlanTablePresenter(day, words, nowMs);
        return new DayView(
                day.event().name(),
                "",
                "Taken at " + words.clock(taken.atMs()) + by(taken.personId()) + String.join("", missing),
                slipped(problem, slip),
                bands,
                rows.table(tasks, goesOn == null ? null : InHand.of(problem, shown)),
                rows.own(tasks, person),
                goesOn == null ? List.of() : Apart.made("What holds us up", () -> holdsUp(problem, goesOn), List::of),
                choices.asOptions(),
                choices.goingOn(),
                mayAct ? choices.tellableOptions() : List.of(),
                handIn,
                day.event().id(),
                mayAct,
                false,
                DayView.Attempts.NONE);
    }

    private DayView empty(String none, DayView.HandIn handIn, boolean mayAct) {
        return new DayView(
                day.event().name(),
                none,
                "",
                List.of(),
                null,
                List.of(),
                List.of(),
                List.of(),
                choices.asOptions(),
                choices.goingOn(),
                mayAct ? choices.tellableOptions() : List.of(),
                handIn,
                day.event().id(),
                mayAct && !day.day().attempts().isEmpty(),
                false,
                DayView.Attempts.NONE);
    }

    PlanProblem problem(Scenario supposed, long now) {
        return supposed.problem(now, day.inForce());
    }

    /** A plan by the clock on the wall, for the tasks that it was made for. */
    List<PlanTaken.Planned> planned(PlanProblem problem, DayPlan plan) {
        List<PlanTaken.Planned> tasks = new ArrayList<>();
        for (Task task : problem.tasks()) {
            long start = plan.start(task.id());
            tasks.add(new PlanTaken.Planned(
                    task.id(),
                    day.ms(start),
                    day.ms(start + task.duration()),
                    String.join(",", plan.people().getOrDefault(task.id(), List.of())),
                    plan.motors().get(task.id())));
        }
        tasks.sort(Comparator.comparingLong(PlanTaken.Planned::startMs).thenComparing(PlanTaken.Planned::task));
        return tasks;
    }

    private String by(@Nullable String person) {
        return person == null || person.isEmpty() ? "" : " by " + words.name(person);
    }

    /** What has happened since the plan was taken, and what it no longer keeps; empty while it holds. */
    List<String> slipped() {
        if (day.taken() == null) {
            return List.of();
        }
        PlanProblem problem = problem(day.asTaken(), day.now());
        return slipped(problem, Slip.of(problem));
    }

    private List<String> slipped(PlanProblem problem, Slip slip) {
        List<String> lines = new ArrayList<>(because(problem));
        if (slip.goesOn() == null) {
            lines.add("In its order the plan cannot be kept any more");
            return lines;
        }
        Map<String, Long> byAttempt = new TreeMap<>();
        slip.later().forEach((task, by) -> byAttempt.merge(PartTask.parse(task).attempt(), by, Math::max));
        byAttempt.forEach((attempt, by) -> {
            if (by >= DayWords.WORTH_SECONDS) {
                lines.add(attempt + ": " + DayWords.lasting(by) + " later than planned");
            }
        });
        return lines;
    }

    /** Why the plan in force does not fit the day any more. */
    List<String> because(PlanProblem problem) {
        PlanTaken taken = day.taken();
        if (taken == null) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        day.setbacks().stream().filter(s -> s.fromMs() > taken.atMs()).forEach(s -> lines.add(choices.inWords(s)));
        lines.addAll(PlanDeviations.of(taken, problem, day.day().attempts(), day.zeroMs(), words.times(), words::name));
        return lines;
    }

    private static String finding(PlanProblem problem, @Nullable DayPlan plan) {
        if (plan == null) {
            return "The plan as it was taken";
        }
        InHand inHand = InHand.of(problem, plan);
        OptionalLong least = problem.tasks().stream()
                .filter(t -> !t.isFixed())
                .map(t -> inHand.timeInHand(t.id()))
                .filter(OptionalLong::isPresent)
                .mapToLong(OptionalLong::getAsLong)
                .min();
        return least.isEmpty()
                ? "No window is ahead"
                : "Every window is kept with at least " + DayWords.lasting(least.getAsLong()) + " in hand";
    }

    /** Absences stand in the lanes of people. */
    DayView.@Nullable Bands bands(List<PlanTaken.Planned> tasks, String finding) {
        return BandsPresenter.of(tasks, finding, nowMs, words);
    }

    private List<String> holdsUp(PlanProblem problem, DayPlan plan) {
        return HoldUp.ofTheTightest(problem, plan).stream()
                .filter(DayPresenter::isWorthAWord)
                .map(h -> words.named(h.task() + " " + h.because()))
                .toList();
    }

    /** That a task follows the one before it in its own attempt, or is where it is, tells nobody anything. */
    private static boolean isWorthAWord(HoldUp hold) {
        return switch (hold.why()) {
            case FIXED, NOT_BEFORE -> false;
            case FOLLOWS ->
                !PartTask.parse(hold.on())
                        .attempt()
                        .equals(PartTask.parse(hold.task()).attempt());
            case HELD, RUNS_AHEAD -> true;
        };
    }

    /** What a proposal moves, an attempt that moves as a whole in one line; empty where nothing worth a word does. */
    List<String> moved(List<PlanTaken.Planned> after) {
        return MovesPresenter.of(day.taken(), after, words, nowMs);
    }

    DayWords words() {
        return words;
    }

    DayChoices choices() {
        return choices;
    }
}

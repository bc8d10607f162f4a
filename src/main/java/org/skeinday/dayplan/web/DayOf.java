package org.skeinday.dayplan.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.web.Words;
import org.skeinday.dayplan.AttemptAhead;
import org.skeinday.dayplan.DayPlan;
import org.skeinday.dayplan.HoldUp;
import org.skeinday.dayplan.InHand;
import org.skeinday.dayplan.Person;
import org.skeinday.dayplan.PlanProblem;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Setback;
import org.skeinday.dayplan.Slip;
import org.skeinday.dayplan.Supposed;
import org.skeinday.dayplan.Task;
import org.skeinday.dayplan.TimeWords;
import org.skeinday.dayplan.Upset;

/** Makes the day's page: the plan in force as it stands now, and what a proposal would change. */
final class DayOf {
    /** Less is not worth a word. */
    private static final long WORTH_SECONDS = 60;

    private static final long MINUTE_S = 60;
    private static final Map<String, String> OVER =
            Map.of(Setback.AWAY, "Is back", Setback.REPAIR, "Is mended", Setback.RETRIEVAL, "Is down");

    private final DayNow day;
    private final UnaryOperator<String> nameOf;
    private final ZoneId zone;
    private final long nowMs;

    /** @param nameOf display name of a person's id */
    DayOf(DayNow day, UnaryOperator<String> nameOf, ZoneId zone, long nowMs) {
        this.day = day;
        this.nameOf = id -> id.equals(SetbacksNow.VENUE) ? id : nameOf.apply(id);
        this.zone = zone;
        this.nowMs = nowMs;
    }

    /** @param person whose own list is shown, empty for nobody */
    DayView view(String person, DayView.HandIn handIn, boolean mayAct) {
        PlanTaken taken = day.taken();
        if (day.day().attempts().isEmpty()) {
            return empty("Every own entry has had its attempts, or there is none yet.", handIn, mayAct);
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
        return new DayView(
                day.event().name(),
                "",
                "Taken at " + Words.clock(taken.atMs(), zone) + by(taken.personId()),
                slipped(problem, slip),
                bands(tasks, finding(problem, goesOn)),
                rows(tasks, goesOn == null ? null : InHand.of(problem, shown)),
                own(tasks, person),
                goesOn == null ? List.of() : holdsUp(problem, goesOn),
                choices(),
                setbacks(),
                mayAct ? tellable() : List.of(),
                handIn,
                day.event().id(),
                mayAct);
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
                choices(),
                setbacks(),
                mayAct ? tellable() : List.of(),
                handIn,
                day.event().id(),
                mayAct && !day.day().attempts().isEmpty());
    }

    PlanProblem problem(Supposed supposed, long now) {
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

    /** Times in conflicts and ways out, for people. */
    TimeWords words() {
        return new TimeWords(s -> Words.clock(day.ms(s), zone), DayOf::lasting);
    }

    static String lasting(long seconds) {
        return seconds < 2 * MINUTE_S ? seconds + " s" : Math.round(seconds / (double) MINUTE_S) + " min";
    }

    private String by(@Nullable String person) {
        return person == null || person.isEmpty() ? "" : " by " + nameOf.apply(person);
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
        slip.later().forEach((task, by) -> byAttempt.merge(BandsOf.attempt(task), by, Math::max));
        byAttempt.forEach((attempt, by) -> {
            if (by >= WORTH_SECONDS) {
                lines.add(attempt + ": " + lasting(by) + " later than planned");
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
        day.setbacks().stream().filter(s -> s.fromMs() > taken.atMs()).forEach(s -> lines.add(setback(s)));
        lines.addAll(Upset.of(taken, problem, day.day().attempts(), day.zeroMs(), words(), nameOf));
        return lines;
    }

    private List<DayView.Going> setbacks() {
        return day.setbacks().stream()
                .map(s -> new DayView.Going(s.id(), setback(s), OVER.getOrDefault(s.kind(), "")))
                .toList();
    }

    private String setback(Setback one) {
        Integer lasts = one.lastsS();
        String until = lasts == null
                ? " for the rest of the day"
                : ", until " + Words.clock(one.fromMs() + (lasts + one.curesS()) * 1000L, zone);
        return switch (one.kind()) {
            case Setback.REPAIR -> day.entryName(one.who()) + ": the model is mended" + until;
            case Setback.RETRIEVAL -> day.entryName(one.who()) + ": the model is stuck aloft" + until;
            default -> nameOf.apply(one.who()) + " is away" + until;
        };
    }

    /** What may be told. */
    private List<DayView.Choice> tellable() {
        List<DayView.Choice> tellable = new ArrayList<>();
        day.crew().forEach(p -> tellable.add(new DayView.Choice(Setback.AWAY + " " + p, nameOf.apply(p) + " is away")));
        day.entryNames().forEach((id, name) -> {
            tellable.add(new DayView.Choice(Setback.REPAIR + " " + id, name + ": the model must be mended"));
            tellable.add(new DayView.Choice(Setback.RETRIEVAL + " " + id, name + ": the model is stuck aloft"));
        });
        return tellable;
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
                : "Every window is kept with at least " + lasting(least.getAsLong()) + " in hand";
    }

    private List<DayView.Row> rows(List<PlanTaken.Planned> tasks, @Nullable InHand inHand) {
        return tasks.stream()
                .filter(t -> t.endMs() > t.startMs())
                .map(t -> {
                    OptionalLong latest = inHand == null ? OptionalLong.empty() : inHand.latestSafeStart(t.task());
                    OptionalLong left = inHand == null ? OptionalLong.empty() : inHand.timeInHand(t.task());
                    return new DayView.Row(
                            Words.clock(t.startMs(), zone) + " – " + Words.clock(t.endMs(), zone),
                            said(t.task()),
                            people(t),
                            t.motor() == null ? "" : t.motor(),
                            latest.isEmpty() || t.startMs() < nowMs
                                    ? ""
                                    : Words.clock(day.ms(latest.getAsLong()), zone),
                            left.isEmpty() || t.startMs() < nowMs ? "" : lasting(left.getAsLong()),
                            t.endMs() <= nowMs ? "done" : t.startMs() <= nowMs ? "now" : "");
                })
                .toList();
    }

    /** Absences stand in the lanes of people. */
    DayView.@Nullable Bands bands(List<PlanTaken.Planned> tasks, String finding) {
        return BandsOf.of(tasks, finding, nowMs, nameOf, this::said, zone);
    }

    /** A task's name for people: an absence has a person's id in it. */
    private String said(String task) {
        return day.crew().stream()
                .filter(person -> task.startsWith(person + " away"))
                .findFirst()
                .map(person -> nameOf.apply(person) + " away")
                .orElse(task);
    }

    /** The plan knows people by their ids. */
    String named(String line) {
        String named = line;
        for (String person : day.crew()) {
            named = named.replace(person, nameOf.apply(person));
        }
        return named;
    }

    private String people(PlanTaken.Planned task) {
        return String.join(", ", task.who().stream().map(nameOf).toList());
    }

    private List<DayView.Own> own(List<PlanTaken.Planned> tasks, String person) {
        return tasks.stream()
                .filter(t -> !person.isEmpty() && t.who().contains(person) && t.endMs() > nowMs)
                .filter(t -> said(t.task()).equals(t.task()))
                .map(t -> new DayView.Own(
                        Words.clock(t.startMs(), zone), t.task(), t.motor() == null ? "" : "motor " + t.motor()))
                .toList();
    }

    private List<String> holdsUp(PlanProblem problem, DayPlan plan) {
        return HoldUp.ofTheTightest(problem, plan).stream()
                .filter(h -> !h.because().startsWith("must not start before")
                        && !h.because().startsWith("is fixed at")
                        && !h.because().startsWith("follows " + BandsOf.attempt(h.task()) + " "))
                .map(h -> named(h.task() + " " + h.because()))
                .toList();
    }

    /** What a proposal moves, an attempt that moves as a whole in one line; empty where nothing worth a word does. */
    List<String> moved(List<PlanTaken.Planned> after) {
        PlanTaken taken = day.taken();
        if (taken == null) {
            return List.of();
        }
        Map<String, PlanTaken.Planned> before = new TreeMap<>();
        taken.tasks().forEach(t -> before.put(t.task(), t));
        Map<String, List<PlanTaken.Planned>> byAttempt = new LinkedHashMap<>();
        after.stream()
                .filter(t -> t.endMs() > t.startMs())
                .forEach(t -> byAttempt
                        .computeIfAbsent(BandsOf.attempt(t.task()), a -> new ArrayList<>())
                        .add(t));
        List<String> moved = new ArrayList<>();
        byAttempt.forEach((attempt, parts) -> asOne(attempt, parts, before)
                .ifPresentOrElse(
                        moved::add,
                        () -> parts.forEach(part -> {
                            PlanTaken.Planned was = before.get(part.task());
                            if (was == null) {
                                moved.add(said(part.task()) + ", new, at " + Words.clock(part.startMs(), zone));
                            } else {
                                moved(was, part, moved);
                            }
                        })));
        return moved;
    }

    /** Empty where its parts move differently, or something else than the time changes. */
    private Optional<String> asOne(
            String attempt, List<PlanTaken.Planned> parts, Map<String, PlanTaken.Planned> before) {
        List<PlanTaken.Planned> ahead =
                parts.stream().filter(p -> p.startMs() > nowMs).toList();
        List<Long> shifts = ahead.stream()
                .filter(p -> before.containsKey(p.task()))
                .map(p -> (p.startMs()
                                - Objects.requireNonNull(before.get(p.task())).startMs())
                        / 1000)
                .toList();
        boolean same = ahead.size() >= 2
                && shifts.size() == ahead.size()
                && shifts.stream().allMatch(s -> Math.abs(s - shifts.get(0)) < WORTH_SECONDS)
                && Math.abs(shifts.get(0)) >= WORTH_SECONDS
                && parts.stream().allMatch(p -> isSameBut(before.get(p.task()), p));
        return same
                ? Optional.of(attempt + ": " + lasting(Math.abs(shifts.get(0)))
                        + (shifts.get(0) > 0 ? " later, from " : " earlier, from ")
                        + Words.clock(ahead.get(0).startMs(), zone))
                : Optional.empty();
    }

    private static boolean isSameBut(PlanTaken.@Nullable Planned before, PlanTaken.Planned after) {
        return before != null
                && before.people().equals(after.people())
                && Objects.equals(before.motor(), after.motor());
    }

    private void moved(PlanTaken.Planned before, PlanTaken.Planned after, List<String> moved) {
        List<String> words = new ArrayList<>();
        long by = (after.startMs() - before.startMs()) / 1000;
        if (Math.abs(by) >= WORTH_SECONDS && after.startMs() > nowMs) {
            words.add("from " + Words.clock(before.startMs(), zone) + " to " + Words.clock(after.startMs(), zone));
        }
        if (!before.people().equals(after.people())) {
            words.add("by " + (after.who().isEmpty() ? "nobody in particular" : people(after))
                    + (before.who().isEmpty() ? "" : " in place of " + people(before)));
        }
        if (!Objects.equals(before.motor(), after.motor()) && after.motor() != null) {
            words.add("with motor " + after.motor() + (before.motor() == null ? "" : " in place of " + before.motor()));
        }
        if (!words.isEmpty()) {
            moved.add(said(after.task()) + " " + String.join(", ", words));
        }
    }

    /** What a change may be tried on. */
    List<DayView.Choice> choices() {
        List<DayView.Choice> choices = new ArrayList<>();
        TreeSet<String> entries = new TreeSet<>();
        TreeSet<String> motors = new TreeSet<>();
        for (AttemptAhead attempt : day.day().attempts()) {
            entries.add(attempt.entry());
            motors.addAll(attempt.motors().keySet());
        }
        entries.forEach(e -> choices.add(new DayView.Choice("WINDOW_MOVES " + e, "the window of " + e + " moves by")));
        for (Part part : Part.values()) {
            choices.add(new DayView.Choice("PART_LONGER " + part.word(), part.word() + " takes longer each time, by"));
        }
        for (Person person : day.day().setting().crew()) {
            if (person.id().equals(SetbacksNow.VENUE)) {
                continue;
            }
            choices.add(new DayView.Choice("PERSON_AWAY " + person.id(), nameOf.apply(person.id()) + " is away"));
        }
        motors.forEach(m -> choices.add(new DayView.Choice("MOTOR_OUT " + m, "motor " + m + " is out")));
        day.day().ids().forEach(id -> choices.add(new DayView.Choice("ATTEMPT_OUT " + id, id + " is left out")));
        return choices;
    }
}

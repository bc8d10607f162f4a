package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.skeinday.dayplan.PartTask;
import org.skeinday.dayplan.PlanTaken;

/** What a proposal moves, in words: an attempt that moves as a whole in one line. */
final class MovesPresenter {
    private final Map<String, PlanTaken.Planned> before = new TreeMap<>();
    private final DayWords words;
    private final long nowMs;

    private MovesPresenter(PlanTaken taken, DayWords words, long nowMs) {
        taken.tasks().forEach(t -> before.put(t.task(), t));
        this.words = words;
        this.nowMs = nowMs;
    }

    /** Empty where nothing worth a word moves. @param taken the plan in force, null before the first */
    static List<String> of(@Nullable PlanTaken taken, List<PlanTaken.Planned> after, DayWords words, long nowMs) {
        return taken == null ? List.of() : new MovesPresenter(taken, words, nowMs).lines(after);
    }

    private List<String> lines(List<PlanTaken.Planned> after) {
        List<String> lines = new ArrayList<>();
        byAttempt(after)
                .forEach((attempt, parts) -> asOne(attempt, parts)
                        .ifPresentOrElse(
                                lines::add,
                                () -> parts.forEach(part -> byItself(part).ifPresent(lines::add))));
        return lines;
    }

    private static Map<String, List<PlanTaken.Planned>> byAttempt(List<PlanTaken.Planned> after) {
        Map<String, List<PlanTaken.Planned>> byAttempt = new LinkedHashMap<>();
        after.stream()
                .filter(t -> t.endMs() > t.startMs())
                .forEach(t -> byAttempt
                        .computeIfAbsent(PartTask.parse(t.task()).attempt(), a -> new ArrayList<>())
                        .add(t));
        return byAttempt;
    }

    /** Empty where its parts move differently, or something else than the time changes. */
    private Optional<String> asOne(String attempt, List<PlanTaken.Planned> parts) {
        List<PlanTaken.Planned> ahead =
                parts.stream().filter(p -> p.startMs() > nowMs).toList();
        List<Long> shifts = ahead.stream()
                .filter(p -> before.containsKey(p.task()))
                .map(p -> shift(Objects.requireNonNull(before.get(p.task())), p))
                .toList();
        boolean same = ahead.size() >= 2
                && shifts.size() == ahead.size()
                && shifts.stream().allMatch(s -> Math.abs(s - shifts.get(0)) < DayWords.WORTH_SECONDS)
                && Math.abs(shifts.get(0)) >= DayWords.WORTH_SECONDS
                && parts.stream().allMatch(p -> isSameBut(before.get(p.task()), p));
        return same
                ? Optional.of(attempt + ": " + DayWords.lasting(Math.abs(shifts.get(0)))
                        + (shifts.get(0) > 0 ? " later, from " : " earlier, from ")
                        + words.clock(ahead.get(0).startMs()))
                : Optional.empty();
    }

    /** Seconds by which a task starts later. */
    private static long shift(PlanTaken.Planned before, PlanTaken.Planned after) {
        return (after.startMs() - before.startMs()) / 1000;
    }

    private static boolean isSameBut(PlanTaken.@Nullable Planned before, PlanTaken.Planned after) {
        return before != null
                && before.people().equals(after.people())
                && Objects.equals(before.motor(), after.motor());
    }

    /** Empty where nothing worth a word changes of this part. */
    private Optional<String> byItself(PlanTaken.Planned part) {
        PlanTaken.Planned was = before.get(part.task());
        if (was == null) {
            return Optional.of(words.task(part.task()) + ", new, at " + words.clock(part.startMs()));
        }
        List<String> changes = changes(was, part);
        return changes.isEmpty()
                ? Optional.empty()
                : Optional.of(words.task(part.task()) + " " + String.join(", ", changes));
    }

    private List<String> changes(PlanTaken.Planned before, PlanTaken.Planned after) {
        List<String> changes = new ArrayList<>();
        if (Math.abs(shift(before, after)) >= DayWords.WORTH_SECONDS && after.startMs() > nowMs) {
            changes.add("from " + words.clock(before.startMs()) + " to " + words.clock(after.startMs()));
        }
        if (!before.people().equals(after.people())) {
            changes.add("by " + (after.who().isEmpty() ? "nobody in particular" : words.people(after))
                    + (before.who().isEmpty() ? "" : " in place of " + words.people(before)));
        }
        if (!Objects.equals(before.motor(), after.motor()) && after.motor() != null) {
            changes.add(
                    "with motor " + after.motor() + (before.motor() == null ? "" : " in place of " + before.motor()));
        }
        return changes;
    }
}

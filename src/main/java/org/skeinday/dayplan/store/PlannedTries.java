package org.skeinday.dayplan.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.dayplan.PartTask;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.platform.db.Tx;

/**
 * Which tries a plan was made for, by the attempts that there were when it was taken. Plans of before named an attempt by its
 * running number, where people and pages now speak of the rules' attempts.
 */
final class PlannedTries {
    private static final Pattern ATTEMPT = Pattern.compile("(.+) ([1-9]\\d{0,2})");

    private final PlanTaken plan;
    private final Map<String, Entry> entries = new HashMap<>();
    private final Map<String, Integer> nth = new HashMap<>();

    /** @param own its attempts in their order */
    private record Entry(List<AttemptNow> own, AttemptNumber next) {}

    private PlannedTries(PlanTaken plan) {
        this.plan = plan;
    }

    static PlannedTries of(Tx tx, PlanTaken plan) {
        var tries = new PlannedTries(plan);
        List<AttemptNow> all = AttemptStore.ofEvent(tx, plan.eventId());
        for (EntryAdded entry : EntryStore.ofEvent(tx, plan.eventId())) {
            List<AttemptNow> own =
                    all.stream().filter(a -> a.entryId().equals(entry.id())).toList();
            tries.entries.put(entry.name(), new Entry(own, AttemptNumbers.next(tx, entry)));
        }
        return tries;
    }

    /** The plan with the rules' numbers; of two tries of one attempt, the first that it names. */
    PlanTaken byRules() {
        List<PlanTaken.Planned> tasks = new ArrayList<>();
        Set<String> named = new HashSet<>();
        for (PlanTaken.Planned task : plan.tasks()) {
            PlanTaken.Planned renamed = renamed(task);
            if (named.add(renamed.task())) {
                tasks.add(renamed);
            }
        }
        List<String> givenUp =
                plan.givenUp().stream().map(this::renamed).distinct().toList();
        return new PlanTaken(plan.eventId(), plan.atMs(), plan.personId(), tasks, plan.windows(), givenUp, true);
    }

    /** For which try of its attempt a task of the plan {@link #byRules} is, from 1; 0 for one that is no attempt's. */
    int nth(PlanTaken.Planned task) {
        return nth.getOrDefault(task.task(), 0);
    }

    private PlanTaken.Planned renamed(PlanTaken.Planned task) {
        PartTask about = PartTask.parse(task.task());
        if (about.part() == null) {
            return task;
        }
        String name = new PartTask(renamed(about.attempt()), about.part()).toString();
        nth.putIfAbsent(name, number(about.attempt()).map(AttemptNumber::nth).orElse(1));
        return new PlanTaken.Planned(name, task.startMs(), task.endMs(), task.people(), task.motor());
    }

    private String renamed(String attempt) {
        return number(attempt)
                .map(number -> attempt.replaceFirst("\\d+$", String.valueOf(number.rule())))
                .orElse(attempt);
    }

    private Optional<AttemptNumber> number(String attempt) {
        Matcher name = ATTEMPT.matcher(attempt);
        if (!name.matches()) {
            return Optional.empty();
        }
        int number = Integer.parseInt(name.group(2));
        return Optional.ofNullable(entries.get(name.group(1)))
                .flatMap(entry ->
                        Boolean.TRUE.equals(plan.byRules()) ? byRules(entry, number) : byRunning(entry, number));
    }

    /** One that is under way, else the next, else the last try that there was. */
    private static Optional<AttemptNumber> byRules(Entry entry, int rule) {
        List<AttemptNow> tries =
                entry.own().stream().filter(a -> a.number().rule() == rule).toList();
        return last(tries.stream().filter(a -> a.state().isOpen()).toList())
                .or(() -> after(entry.next(), rule - entry.next().rule()))
                .or(() -> last(tries));
    }

    private static Optional<AttemptNumber> byRunning(Entry entry, int running) {
        return last(entry.own().stream()
                        .filter(a -> a.number().running() == running)
                        .toList())
                .or(() -> after(entry.next(), running - entry.next().running()));
    }

    private static Optional<AttemptNumber> last(List<AttemptNow> attempts) {
        return attempts.isEmpty()
                ? Optional.empty()
                : Optional.of(attempts.get(attempts.size() - 1).number());
    }

    /** So many after the next one; empty before it. */
    private static Optional<AttemptNumber> after(AttemptNumber next, int steps) {
        if (steps < 0) {
            return Optional.empty();
        }
        AttemptNumber number = next;
        for (int i = 0; i < steps; i++) {
            number = number.following();
        }
        return Optional.of(number);
    }
}

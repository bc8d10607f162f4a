package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Part;

/** What goes on beside the attempts, and which of them it holds up: absences, retrievals, repairs. */
final class BesideTasks {
    private final List<AttemptAhead> attempts;
    private final CrewNeeds crew;
    private final long now;
    private final List<Task> tasks = new ArrayList<>();
    private final List<Lag> lags = new ArrayList<>();

    private BesideTasks(List<AttemptAhead> attempts, CrewNeeds crew, long now) {
        this.attempts = attempts;
        this.crew = crew;
        this.now = now;
    }

    /** @param attempts an entry's own in their order @param now seconds since the plan's zero */
    static BesideTasks of(ParallelTasks besides, List<AttemptAhead> attempts, CrewNeeds crew, long now) {
        BesideTasks beside = new BesideTasks(attempts, crew, now);
        beside.add(besides);
        return beside;
    }

    List<Task> tasks() {
        return tasks;
    }

    List<Lag> lags() {
        return lags;
    }

    private void add(ParallelTasks besides) {
        // Whoever does nothing that is planned may be away.
        besides.absences().stream()
                .filter(one -> one.until() > now && crew.isCrew(one.person()))
                .forEach(this::away);
        for (ParallelTasks.Retrieval one : besides.retrievals()) {
            long lasts = lasting(one.seconds(), one.began());
            Task task = Task.of(one.entry() + " retrieval before " + one.before(), lasts)
                    .needing(EventChains.POLE, 1);
            tasks.add(crew.person(begunOrFrom(task, one.earliest(), one.began()), ParallelTasks.RETRIEVES));
            holdUp(task.id(), lasts, one.entry(), one.before());
        }
        for (ParallelTasks.Repair one : besides.repairs()) {
            String id = one.entry() + " repair before " + one.before();
            long lasts = lasting(one.work(), one.began());
            tasks.add(begunOrFrom(Task.of(id, lasts), one.earliest(), one.began()));
            holdUp(id, lasts + one.cure(), one.entry(), one.before());
            besides.retrievals().stream()
                    .filter(down ->
                            one.began() == null && down.entry().equals(one.entry()) && down.before() == one.before())
                    .forEach(down -> lags.add(Lag.between(
                            down.entry() + " retrieval before " + down.before(),
                            id,
                            lasting(down.seconds(), down.began()),
                            null)));
        }
    }

    /** The same however the plan's zero moves; a second absence of a person has its start in the name. */
    private String awayName(ParallelTasks.Absence one) {
        String name = one.person() + " away";
        return tasks.stream().anyMatch(task -> task.id().equals(name)) ? name + " from " + one.from() : name;
    }

    /** What runs takes as long as planned, or longer where it already has. */
    private long lasting(long planned, @Nullable Long began) {
        return began == null ? planned : Math.max(planned, now - began);
    }

    private Task begunOrFrom(Task task, long earliest, @Nullable Long began) {
        return began == null ? task.within(Math.max(now, earliest), null) : task.fixedAt(began);
    }

    private void away(ParallelTasks.Absence one) {
        long from = Math.max(0, one.from()); // it keeps its start, so that a plan that knows it stays as it is
        tasks.add(Task.of(awayName(one), one.until() - from)
                .needingPerson(PersonNeed.of(one.person()))
                .fixedAt(from));
    }

    /** The first attempt that needs the model waits; what comes after it follows. */
    private void holdUp(String id, long least, String entry, int before) {
        attempts.stream()
                .filter(attempt ->
                        attempt.entry().equals(entry) && attempt.number() >= before && attempt.begun(Part.WIND) == null)
                .findFirst()
                .ifPresent(attempt -> lags.add(Lag.between(
                        id,
                        EventChains.task(attempt, attempt.begun().isEmpty() ? Part.PREPARE : Part.WIND),
                        least,
                        null)));
    }
}

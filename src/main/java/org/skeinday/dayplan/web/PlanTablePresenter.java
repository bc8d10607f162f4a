package org.skeinday.dayplan.web;

import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.skeinday.dayplan.InHand;
import org.skeinday.dayplan.PlanTaken;

/** A plan as a table, and as the list of one person. */
final class PlanTablePresenter {
    private final DayNow day;
    private final DayWords words;
    private final long nowMs;

    PlanTablePresenter(DayNow day, DayWords words, long nowMs) {
        this.day = day;
        this.words = words;
        this.nowMs = nowMs;
    }

    /** @param inHand null where the plan cannot be kept: then nothing is said of time in hand */
    List<DayView.Row> table(List<PlanTaken.Planned> tasks, @Nullable InHand inHand) {
        return tasks.stream()
                .filter(t -> t.endMs() > t.startMs())
                .map(t -> row(t, inHand))
                .toList();
    }

    private DayView.Row row(PlanTaken.Planned task, @Nullable InHand inHand) {
        OptionalLong latest = inHand == null ? OptionalLong.empty() : inHand.latestSafeStart(task.task());
        OptionalLong left = inHand == null ? OptionalLong.empty() : inHand.timeInHand(task.task());
        boolean begun = task.startMs() < nowMs;
        return new DayView.Row(
                words.clock(task.startMs()) + " – " + words.clock(task.endMs()),
                words.task(task.task()),
                words.people(task),
                motor(task),
                latest.isEmpty() || begun ? "" : words.clock(day.ms(latest.getAsLong())),
                left.isEmpty() || begun ? "" : DayWords.lasting(left.getAsLong()),
                task.endMs() <= nowMs ? "done" : task.startMs() <= nowMs ? "now" : "");
    }

    /** With when it may be wound, where it may not be at once: by then, or later than planned. */
    private String motor(PlanTaken.Planned task) {
        String motor = task.motor();
        Long ready = motor == null ? null : day.ready().get(motor);
        if (motor == null || ready == null || task.startMs() < nowMs) {
            return motor == null ? "" : motor;
        }
        return motor + (ready <= task.startMs() ? ", ready from " : ", not ready before ") + words.clock(ready);
    }

    /** What a person does from now on; an absence is nothing that is done. @param person id, empty for nobody */
    List<DayView.Own> own(List<PlanTaken.Planned> tasks, String person) {
        return tasks.stream()
                .filter(t -> !person.isEmpty() && t.who().contains(person) && t.endMs() > nowMs)
                .filter(t -> words.task(t.task()).equals(t.task()))
                .map(t -> new DayView.Own(
                        words.clock(t.startMs()), t.task(), t.motor() == null ? "" : "motor " + t.motor()))
                .toList();
    }
}

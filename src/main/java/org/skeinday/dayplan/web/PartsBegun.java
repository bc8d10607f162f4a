package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.StepTimes;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.contest.EntryAdded;
import org.skeinday.dayplan.AttemptAhead;
import org.skeinday.dayplan.EventChains;
import org.skeinday.dayplan.EventSetting;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.Setback;
import org.skeinday.platform.db.Tx;

/** What has begun of an attempt under way, as the plan needs it. */
final class PartsBegun {
    private final Tx tx;
    private final @Nullable PlanTaken taken;
    private final List<Setback> setbacks;
    private final long nowMs;

    /** @param taken the plan in force, null before the first */
    PartsBegun(Tx tx, @Nullable PlanTaken taken, List<Setback> setbacks, long nowMs) {
        this.tx = tx;
        this.taken = taken;
        this.setbacks = setbacks;
        this.nowMs = nowMs;
    }

    /** What was passed over took no time. */
    List<AttemptAhead.Begun> of(@Nullable StepTimes a, long zero, EntryAdded entry, AttemptNumber number) {
        if (a == null || a.calledAtMs() == null) {
            return List.of();
        }
        @Nullable Long[] starts = {a.calledAtMs(), a.windingAtMs(), a.holdingAtMs(), a.releasedAtMs(), a.landedAtMs()};
        int last = 0;
        for (int i = 0; i < starts.length; i++) {
            last = starts[i] == null ? last : i;
        }
        List<AttemptAhead.Begun> begun = new ArrayList<>();
        long start = second(starts[0], zero, 0);
        for (int i = 0; i <= last; i++) {
            long next = i == last ? 0 : second(later(starts, i + 1), zero, start);
            Part part = Part.values()[i];
            begun.add(new AttemptAhead.Begun(part, start, i == last ? null : (Long) next).by(who(entry, number, part)));
            start = next;
        }
        return begun;
    }

    /** Who does it: nobody notes it while it runs. Only winding and loading are named for an attempt. */
    private @Nullable String who(EntryAdded entry, AttemptNumber number, Part part) {
        Optional<String> who = switch (part) {
            case WIND -> named(entry, number, EventSetting.WINDS);
            case LOAD -> named(entry, number, EventSetting.LOADS);
            case PREPARE, FLY, RUN_BACK -> planned(EventChains.task(entry.name(), number.rule(), part));
        };
        return who.filter(person -> setbacks.stream().noneMatch(s -> SetbacksNow.isAway(s, person, nowMs)))
                .orElse(null);
    }

    private Optional<String> named(EntryAdded entry, AttemptNumber number, String does) {
        return Assignments.named(tx, entry, number, does)
                .map(assigned -> assigned.people().get(0));
    }

    private Optional<String> planned(String task) {
        return taken == null
                ? Optional.empty()
                : taken.tasks().stream()
                        .filter(t -> t.task().equals(task))
                        .flatMap(t -> t.who().stream())
                        .findFirst();
    }

    private static @Nullable Long later(@Nullable Long[] starts, int from) {
        for (int i = from; i < starts.length; i++) {
            if (starts[i] != null) {
                return starts[i];
            }
        }
        return null;
    }

    /** A clock that was set must not turn a day round. */
    private static long second(@Nullable Long ms, long zero, long least) {
        return ms == null ? least : Math.max(least, (ms - zero) / 1000);
    }
}

package org.skeinday.dayplan.action;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.store.EventStore;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** The captain takes a plan that was proposed. */
public final class TakePlan {
    private static final Set<String> TOPICS = Set.of("plan");
    private static final int MOST_TASKS = 2_000;

    /**
     * A plan as it was shown.
     *
     * @param seenAtMs when the plan was taken that it was proposed beside; null when there was none
     */
    public record Take(
            String event,
            List<PlanTaken.Planned> tasks,
            @Nullable List<PlanTaken.Window> windows,
            @Nullable List<String> givenUp,
            @Nullable Long seenAtMs) {}

    private TakePlan() {}

    public static List<ActKind<?>> kinds() {
        return List.of(new ActKind<>("plan.take", Take.class, TakePlan::decide));
    }

    static Decision decide(Tx tx, ActContext context, Take take) {
        if (EventStore.find(tx, take.event()).isEmpty()) {
            return Decision.unknown("There is no such event any more; look again");
        }
        if (take.tasks().isEmpty() || take.tasks().size() > MOST_TASKS) {
            return Decision.refused("A plan has 1 to " + MOST_TASKS + " tasks, this one has "
                    + take.tasks().size());
        }
        Long there = PlanStore.inForce(tx, take.event()).map(PlanTaken::atMs).orElse(null);
        if (!java.util.Objects.equals(there, take.seenAtMs())) {
            return new Decision.Outdated("Someone else has taken another plan meanwhile. Look again, then decide.");
        }
        var fact = new PlanTaken(
                take.event(),
                context.now().toEpochMilli(),
                context.person(),
                take.tasks(),
                take.windows(),
                take.givenUp(),
                true);
        return Decision.decided(TOPICS, Fact.of("plan.taken", fact));
    }
}

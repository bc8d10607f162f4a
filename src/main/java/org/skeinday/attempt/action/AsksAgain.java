package org.skeinday.attempt.action;

import java.util.List;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Run;
import org.skeinday.steps.Step;
import org.skeinday.steps.action.Began;
import org.skeinday.steps.store.RunStore;

/**
 * Another wind of the same attempt asks again what was checked before the last one: people have been at the lane meanwhile,
 * counter and needle have moved, and another motor has another tag and another direction.
 */
final class AsksAgain {
    static final String RUN_BACK = "the motor was run back: look again before it is wound";
    static final String OTHER_MOTOR = "another motor is taken: look again before it is wound";

    private AsksAgain() {}

    /** The critical items of the list before winding that are done; none where nobody began it. */
    static List<Fact> beforeWinding(Tx tx, ActContext context, String attempt, String reason) {
        Run run = RunStore.of(tx, Moment.BEFORE_WINDING, attempt);
        List<Step> done = run.done().stream().filter(Step::critical).toList();
        return Began.reopened(context, run, attempt, done, reason, context.now().toEpochMilli());
    }
}

package org.skeinday.steps.action;

import java.util.List;
import java.util.Optional;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.LineLast;
import org.skeinday.steps.Resumption;
import org.skeinday.steps.Run;
import org.skeinday.steps.Step;
import org.skeinday.steps.Ticked;
import org.skeinday.steps.store.RunStore;

/** Asks {@link LineLast} for a tick that comes in. */
final class BeforeTheLine {
    private BeforeTheLine() {}

    /** Why it comes too early; empty when it is taken. */
    static Optional<String> refuses(Tx tx, ActContext context, Run run, Ticked tick, String attempt) {
        List<Step> again = run.resumedBy(context.personOrNull(), context.device(), tick.atMs())
                .map(Resumption::askAgain)
                .orElse(List.of());
        return LineLast.refuses(run, tick.stepId(), again, RunStore.passes(tx, attempt));
    }

    /** The line, asked again when this is ticked after it; nothing while whoever goes on is asked it anyway. */
    static List<Fact> opens(Tx tx, ActContext context, Run run, Ticked tick, String attempt) {
        if (!LineLast.opensAgain(run, tick.stepId(), tick.atMs(), RunStore.passes(tx, attempt))) {
            return List.of();
        }
        List<Step> line = run.list().step(Step.LINE).stream().toList();
        return Began.reopened(context, run, attempt, line, LineLast.SEEN_TO_AFTER, tick.atMs() - 1);
    }
}

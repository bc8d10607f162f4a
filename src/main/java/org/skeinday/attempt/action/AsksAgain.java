package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
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
    static final String OTHER_PLACE = "it is wound at another place: look again before it is wound";

    private AsksAgain() {}

    /** Of a watch whose mark came in late. */
    private static final String MARKED_SINCE = "a watch has marked a contact since: say again what it touched";

    /** What was answered of contacts after the landing, when a mark of one comes in later; nothing before. */
    static List<Fact> contacts(Tx tx, ActContext context, String attempt) {
        Run run = RunStore.of(tx, Moment.AFTER_LANDING, attempt);
        List<Step> again = Stream.of(run.done(), run.skipped())
                .flatMap(List::stream)
                .filter(step -> step.id().equals(SaidInLists.CONTACTS))
                .toList();
        return again.isEmpty()
                ? List.of()
                : Began.reopened(
                        context,
                        run,
                        attempt,
                        again,
                        MARKED_SINCE,
                        context.now().toEpochMilli());
    }

    /**
     * The critical items of the list before winding that are done, and all of them where somebody answered for what was
     * open: that was said of the last wind.
     */
    static List<Fact> beforeWinding(Tx tx, ActContext context, String attempt, String reason) {
        Run run = RunStore.of(tx, Moment.BEFORE_WINDING, attempt);
        boolean wasPassed = !RunStore.passes(tx, attempt).isEmpty();
        List<Step> again = (wasPassed ? run.list().steps() : run.done())
                .stream().filter(Step::critical).toList();
        if (again.isEmpty()) {
            return List.of();
        }
        long atMs = context.now().toEpochMilli();
        List<Fact> facts = new ArrayList<>(Began.ifNew(tx, context, run, attempt, atMs));
        facts.addAll(Began.reopened(context, run, attempt, again, reason, atMs));
        return facts;
    }
}

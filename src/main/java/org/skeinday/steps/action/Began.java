package org.skeinday.steps.action;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.Reopened;
import org.skeinday.steps.Run;
import org.skeinday.steps.RunBegun;
import org.skeinday.steps.Step;
import org.skeinday.steps.store.ListStore;
import org.skeinday.steps.store.RunStore;

/** What a tap brings with it: the run it begins, the list as it was shipped, what is asked again after an interruption. */
public final class Began {
    private Began() {}

    /** A run that nobody began, begins; the list as it was shipped goes into the record with it. */
    public static List<Fact> ifNew(Tx tx, ActContext context, Run run, String subject, long atMs) {
        List<Fact> facts = new ArrayList<>();
        Checklist list = run.list();
        String id = RunStore.id(list.id(), subject);
        if (RunStore.begun(tx, id).isEmpty()) {
            if (ListStore.revision(tx, list.id(), list.revision()).isEmpty()) {
                facts.add(Fact.of("checklist.revised", new ChecklistRevised(Checklists.rows(list), atMs, null)));
            }
            facts.add(Fact.of(
                    "run.begun",
                    new RunBegun(
                            id, list.id(), list.revision(), subject, atMs, context.personOrNull(), context.device())));
        }
        return facts;
    }

    /** The same; and who goes on after an interruption is asked the critical items again, just before the tap itself. */
    static List<Fact> orGoesOn(Tx tx, ActContext context, Run run, String subject, long atMs) {
        List<Fact> facts = ifNew(tx, context, run, subject, atMs);
        run.resumedBy(context.personOrNull(), context.device(), atMs)
                .ifPresent(resumed ->
                        facts.addAll(reopened(context, run, subject, resumed.askAgain(), resumed.reason(), atMs - 1)));
        return facts;
    }

    /** Items that are asked again. */
    public static List<Fact> reopened(
            ActContext context, Run run, String subject, List<Step> steps, String reason, long atMs) {
        List<Fact> facts = new ArrayList<>();
        for (Step step : steps) {
            facts.add(Fact.of(
                    "step.reopened",
                    new Reopened(
                            context.nextId(),
                            RunStore.id(run.list().id(), subject),
                            step.id(),
                            reason,
                            atMs,
                            context.personOrNull(),
                            context.device())));
        }
        return facts;
    }
}

package org.skeinday.steps.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.Corrected;
import org.skeinday.steps.Run;
import org.skeinday.steps.RunBegun;
import org.skeinday.steps.RunFact;
import org.skeinday.steps.RunRules;
import org.skeinday.steps.TakenBack;
import org.skeinday.steps.store.ListStore;
import org.skeinday.steps.store.PlaceLists;
import org.skeinday.steps.store.RunStore;
import org.skeinday.units.Sentence;

/** Taps that are put right: taken back as a slip, or corrected later with a reason. */
public final class PutRight {
    private final StepEffect said;
    private final BeforeTheLine line;

    /** @param said what values say elsewhere */
    PutRight(StepEffect said, BeforeTheLine line) {
        this.said = said;
        this.line = line;
    }

    /** A tap was a slip. @param about id of the tick, reading or skip */
    public record Undo(
            String about, @Nullable Long serverMs, @Nullable Long boundMs) {}

    /**
     * What a tick said is put right later.
     *
     * @param done yes when the item was done after all, with this answer
     * @param insist doubts that were asked about and are so, as a refusal named them; null where none were
     */
    public record Correct(
            String about,
            String step,
            String done,
            @Nullable String answer,
            String reason,
            @Nullable String unit,
            @Nullable String insist) {}

    static Decision undo(Tx tx, ActContext context, Undo undo) {
        RunFact undone = RunStore.fact(tx, undo.about()).orElse(null);
        if (undone == null) {
            return Decision.unknown("There is no such tap: it has not come in yet");
        }
        long atMs = TapTime.of(context, undo.serverMs(), undo.boundMs(), undone.atMs());
        var fact = new TakenBack(
                context.ownId(), undone.runId(), undone.id(), atMs, context.personOrNull(), context.device());
        return RunRules.refuses(undone, fact, RunStore.PAUSES)
                .map(no -> Decision.refused(Sentence.begin(no)))
                .orElseGet(() -> StepActions.decided(List.of(Fact.of("step.taken-back", fact))));
    }

    Decision correct(Tx tx, ActContext context, Correct correct) {
        RunFact about = RunStore.fact(tx, correct.about()).orElse(null);
        if (about == null) {
            return Decision.unknown("There is no such tap any more; look again");
        }
        Optional<Decision> wrong = StepActions.wrongReason(correct.reason());
        if (wrong.isPresent()) {
            return wrong.get();
        }
        boolean done = correct.done().equals("yes");
        String subject =
                RunStore.begun(tx, about.runId()).map(RunBegun::subjectId).orElse("");
        Optional<Checklist> list =
                RunStore.begun(tx, about.runId()).flatMap(run -> ListStore.revision(tx, run.listId(), run.revision()));
        @Nullable
        String answer =
                correct.answer() == null || correct.answer().isBlank() || !done ? null : plain(tx, list, correct);
        var fact = new Corrected(
                context.ownId(),
                about.runId(),
                about.id(),
                correct.step(),
                done,
                answer,
                correct.reason().strip(),
                context.now().toEpochMilli(),
                context.personOrNull(),
                context.device());
        Optional<Run> run = list.map(l -> RunStore.of(tx, l, subject));
        Optional<String> no = list.flatMap(l -> RunRules.refuses(l, fact))
                .or(() -> run.flatMap(walk -> BeforeTheLine.refuses(walk, fact)));
        if (no.isPresent()) {
            return Decision.refused("answer", no.get());
        }
        List<Fact> facts = new ArrayList<>(
                run.map(walk -> line.opens(tx, context, walk, fact, subject)).orElse(List.of()));
        facts.add(Fact.of("step.corrected", fact));
        return StepActions.decided(facts, elsewhere(tx, context, fact, correct.insist()));
    }

    private static String plain(Tx tx, Optional<Checklist> list, Correct correct) {
        String typed = String.valueOf(correct.answer()).strip();
        return list.map(l -> StepActions.plain(tx, l, correct.step(), typed, correct.unit()))
                .orElse(typed);
    }

    /** A corrected value says the same elsewhere as one that is ticked, and is refused by the same rules. */
    private Optional<Decision> elsewhere(Tx tx, ActContext context, Corrected fact, @Nullable String insist) {
        String answer = fact.answer();
        if (answer == null) {
            return Optional.empty();
        }
        return RunStore.begun(tx, fact.runId())
                .flatMap(run -> ListStore.revision(tx, run.listId(), run.revision())
                        .flatMap(list -> list.step(fact.stepId())
                                .flatMap(step -> said.elsewhere(
                                        tx,
                                        context,
                                        PlaceLists.named(tx, list, run.subjectId()),
                                        step,
                                        answer,
                                        insist))));
    }
}

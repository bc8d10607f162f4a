package org.skeinday.steps.action;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.store.TeamUnits;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ReadAloud;
import org.skeinday.steps.Run;
import org.skeinday.steps.RunRules;
import org.skeinday.steps.Skipped;
import org.skeinday.steps.Step;
import org.skeinday.steps.Ticked;
import org.skeinday.steps.store.ListStore;
import org.skeinday.steps.store.PlaceLists;
import org.skeinday.steps.store.RunStore;

/** Taps of a walk through a list. None is refused for being late; each is kept beside the others. */
public final class StepActions {
    static final Set<String> TOPICS = Set.of("checks");
    private static final int LONGEST = 400;
    private static final int LONGEST_SUBJECT = 165;
    private static final int LONGEST_ANSWER = 200;

    private final StepEffect said;
    private final BeforeTheLine line;

    private StepActions(StepEffect said, WoundAt places) {
        this.said = said;
        this.line = new BeforeTheLine(places);
    }

    /**
     * One item is done.
     *
     * @param subject what the list is about: the attempt, the day, the day's model or winding place
     * @param answer the value that it asks for; null for OK
     * @param insist doubts that were asked about and are so, as a refusal named them; null where none were
     * @param revision of the list as it was shown
     * @param unit that stood beside the item; null where the page of then did not say it
     */
    public record Tick(
            String list,
            String subject,
            String step,
            @Nullable String answer,
            @Nullable String insist,
            int revision,
            @Nullable Long serverMs,
            @Nullable Long boundMs,
            @Nullable String unit) {
        public Tick(
                String list,
                String subject,
                String step,
                @Nullable String answer,
                int revision,
                @Nullable Long serverMs,
                @Nullable Long boundMs) {
            this(list, subject, step, answer, null, revision, serverMs, boundMs, null);
        }
    }

    /** The whole list was read aloud and answered. */
    public record Read(
            String list,
            String subject,
            int revision,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** An item is left out. */
    public record Skip(
            String list,
            String subject,
            String step,
            String reason,
            int revision,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** @param said what values say elsewhere @param places where attempts are wound */
    public static List<ActKind<?>> kinds(StepEffect said, WoundAt places) {
        var deeds = new StepActions(said, places);
        var right = new PutRight(said, deeds.line);
        return List.of(
                new ActKind<>("step.tick", Tick.class, deeds::tick),
                new ActKind<>("step.read-aloud", Read.class, StepActions::read),
                new ActKind<>("step.skip", Skip.class, StepActions::skip),
                new ActKind<>("step.undo", PutRight.Undo.class, PutRight::undo),
                new ActKind<>("step.correct", PutRight.Correct.class, right::correct),
                new ActKind<>("caution.met", MeetCaution.Met.class, MeetCaution::decide),
                new ActKind<>("checklist.revise", ReviseList.Revision.class, ReviseList::decide));
    }

    private Decision tick(Tx tx, ActContext context, Tick tick) {
        Checklist inForce = ListStore.find(tx, tick.list()).orElse(null);
        if (inForce == null || isNoSubject(tick.subject())) {
            return noList();
        }
        String subject = PlaceLists.named(tx, inForce, tick.subject());
        Run run = RunStore.of(tx, inForce, subject);
        @Nullable
        String answer = tick.answer() == null || tick.answer().isBlank()
                ? null
                : plain(tx, run.list(), tick.step(), tick.answer(), tick.unit());
        if (answer != null && answer.length() > LONGEST_ANSWER) {
            return Decision.refused("answer", "An answer has at most " + LONGEST_ANSWER + " characters");
        }
        long atMs = TapTime.of(context, tick.serverMs(), tick.boundMs(), 0);
        var fact = new Ticked(
                context.ownId(),
                RunStore.id(tick.list(), subject),
                tick.step(),
                answer,
                tick.revision(),
                atMs,
                context.personOrNull(),
                context.device());
        Optional<String> no =
                RunRules.refuses(run.list(), fact).or(() -> line.refuses(tx, context, run, fact, subject));
        if (no.isPresent()) {
            return Decision.refused("answer", no.get());
        }
        List<Fact> facts = Began.orGoesOn(tx, context, run, subject, atMs);
        facts.addAll(line.opens(tx, context, run, fact, subject));
        facts.add(Fact.of("step.ticked", fact));
        Optional<Decision> elsewhere = answer == null
                ? Optional.empty()
                : said.elsewhere(
                        tx, context, subject, run.list().step(tick.step()).orElseThrow(), answer, tick.insist());
        return decided(facts, elsewhere);
    }

    /** What was typed, as the item's answers are kept. @param unit that stood beside it, null for the team's */
    static String plain(Tx tx, Checklist list, String step, String typed, @Nullable String unit) {
        return list.step(step)
                .map(Step::answer)
                .map(answer -> answer.plain(typed, unit == null ? answer.under(TeamUnits.of(tx)) : unit))
                .orElse(typed.strip());
    }

    static Decision read(Tx tx, ActContext context, Read read) {
        Checklist inForce = ListStore.find(tx, read.list()).orElse(null);
        if (inForce == null || isNoSubject(read.subject())) {
            return noList();
        }
        String subject = PlaceLists.named(tx, inForce, read.subject());
        Run run = RunStore.of(tx, inForce, subject);
        long atMs = TapTime.of(context, read.serverMs(), read.boundMs(), 0);
        var fact = new ReadAloud(
                context.ownId(),
                RunStore.id(read.list(), subject),
                read.revision(),
                atMs,
                context.personOrNull(),
                context.device());
        Optional<String> no = RunRules.refuses(run.list(), fact);
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        List<Fact> facts = Began.ifNew(tx, context, run, subject, atMs);
        facts.add(Fact.of("list.read-aloud", fact));
        return decided(facts);
    }

    static Decision skip(Tx tx, ActContext context, Skip skip) {
        Checklist inForce = ListStore.find(tx, skip.list()).orElse(null);
        if (inForce == null || isNoSubject(skip.subject())) {
            return noList();
        }
        Optional<Decision> wrong = wrongReason(skip.reason());
        if (wrong.isPresent()) {
            return wrong.get();
        }
        String subject = PlaceLists.named(tx, inForce, skip.subject());
        Run run = RunStore.of(tx, inForce, subject);
        long atMs = TapTime.of(context, skip.serverMs(), skip.boundMs(), 0);
        var fact = new Skipped(
                context.ownId(),
                RunStore.id(skip.list(), subject),
                skip.step(),
                skip.reason().strip(),
                skip.revision(),
                atMs,
                context.personOrNull(),
                context.device());
        Optional<String> no = RunRules.refuses(run.list(), fact);
        if (no.isPresent()) {
            return Decision.refused("reason", no.get());
        }
        List<Fact> facts = Began.orGoesOn(tx, context, run, subject, atMs);
        facts.add(Fact.of("step.skipped", fact));
        return decided(facts);
    }

    /** What is wrong with a reason; empty when nothing is. */
    static Optional<Decision> wrongReason(String reason) {
        if (reason.isBlank()) {
            return Optional.of(Decision.refused("reason", "Say why: it stays visible"));
        }
        return reason.length() > LONGEST
                ? Optional.of(Decision.refused(
                        "reason", "A reason has at most " + LONGEST + " characters, this one has " + reason.length()))
                : Optional.empty();
    }

    private static boolean isNoSubject(String subject) {
        return subject.isBlank() || subject.length() > LONGEST_SUBJECT;
    }

    private static Decision noList() {
        return Decision.unknown("There is no such list; look again");
    }

    /** @param other what a value says elsewhere: refused, so is the tap; else its facts go with those of the tap */
    static Decision decided(List<Fact> facts, Optional<Decision> other) {
        return other.map(said -> with(facts, said)).orElseGet(() -> decided(facts));
    }

    private static Decision with(List<Fact> facts, Decision other) {
        if (!(other instanceof Decision.Decided more)) {
            return other;
        }
        facts.addAll(more.facts());
        Set<String> topics = new HashSet<>(more.topics());
        topics.addAll(TOPICS);
        return new Decision.Decided(facts, more.names(), topics);
    }

    static Decision decided(List<Fact> facts) {
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }
}

package org.skeinday.attempt.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptReopened;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.Signatures;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** What is done with a result: it is signed, protested, opened again. Nothing of the old is lost. */
public final class ResultActions {
    /**
     * Signs.
     *
     * @param as captain, or watch-1 to watch-3
     * @param seenMs the official time that was shown
     * @param pin whether the coach's PIN was given
     */
    public record Sign(String attempt, String as, long seenMs, boolean pin) {}

    /** @param words against what */
    public record Protests(String attempt, String words) {}

    public record Settle(String protest, String how) {}

    /** @param pin whether the coach's PIN was given */
    public record Reopen(String attempt, String reason, boolean pin) {}

    private ResultActions() {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("attempt.sign", Sign.class, ResultActions::sign),
                new ActKind<>("attempt.sign-list", SignList.Times.class, SignList::decide),
                new ActKind<>("result.make-final", MakeFinal.Final.class, MakeFinal::decide),
                new ActKind<>("attempt.protest", Protests.class, ResultActions::protest),
                new ActKind<>("attempt.settle", Settle.class, ResultActions::settle),
                new ActKind<>("attempt.reopen", Reopen.class, ResultActions::reopen),
                new ActKind<>("attempt.collision", CollisionActions.Say.class, CollisionActions::decide));
    }

    static Decision sign(Tx tx, ActContext context, Sign sign) {
        AttemptNow now = AttemptStore.find(tx, sign.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        Long official = now.officialMs();
        if (now.state() != State.CLOSED || official == null) {
            return Decision.refused(PhaseGate.wrong(tx, context, now, "An official time is signed"));
        }
        if (official != sign.seenMs()) {
            return new Decision.Outdated("The official time was changed meanwhile. Look again, then sign.");
        }
        EventAdded event = EventStore.find(tx, now.eventId()).orElseThrow();
        if (event.dayKind() != DayKind.HOSTING) {
            return Decision.refused("sign", "Elsewhere the officials sign; here the announced time is kept");
        }
        Signatures signatures = ResultRecord.signatures(tx, now.id());
        if (!signatures.lacks(sign.as())) {
            return Decision.refused(
                    "sign", "There is nothing to sign here for " + sign.as().replace('-', ' '));
        }
        boolean own = WatchStore.everWatched(tx, now.id(), context.device()).stream()
                .anyMatch(w -> AttemptSigned.watch(w.slot()).equals(sign.as()));
        if (!sign.pin() && !own) {
            return Decision.refused(
                    "pin",
                    sign.as().equals(AttemptSigned.CAPTAIN)
                            ? "The captain signs with the coach's PIN"
                            : "Its own device signs for a watch; from another one it is signed with the coach's PIN");
        }
        var fact = new AttemptSigned(
                context.ownId(),
                now.id(),
                sign.as(),
                context.person(),
                context.device(),
                context.now().toEpochMilli());
        return Decision.decided(AttemptActions.TOPICS, Fact.of("attempt.signed", fact));
    }

    static Decision protest(Tx tx, ActContext context, Protests protests) {
        AttemptNow now = AttemptStore.find(tx, protests.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        LiveAttempt live = LiveAttempts.find(tx, now.id()).orElseThrow();
        if (!AttemptActs.of(live).contains(AttemptAct.PROTEST)) {
            return Decision.refused(PhaseGate.wrong(tx, context, now, "A protest is against a flight that has landed"));
        }
        String words = protests.words().strip();
        Optional<Decision> wrong = AttemptActions.wrongWords("words", words, "Say what is protested, and why");
        if (wrong.isPresent()) {
            return wrong.get();
        }
        long atMs = context.now().toEpochMilli();
        EventAdded event = EventStore.find(tx, now.eventId()).orElseThrow();
        long until = until(tx, event, now).orElse(Long.MAX_VALUE);
        var fact = new Protest(context.ownId(), now.id(), words, context.person(), atMs, atMs > until, null, null);
        return Decision.decided(AttemptActions.TOPICS, Fact.of("attempt.protested", fact));
    }

    /** When the time to protest is over, from the closing or, elsewhere, from the announcement; epoch ms; empty for never. */
    public static Optional<Long> until(Tx tx, EventAdded event, AttemptNow attempt) {
        Long from = event.dayKind() == DayKind.VISITING
                ? AttemptStore.note(tx, attempt.id()).announcedAtMs()
                : attempt.closedAtMs();
        return TermsStore.of(tx, event.id()).protestUntil(from);
    }

    static Decision settle(Tx tx, ActContext context, Settle settle) {
        Protest protest = ResultRecord.protest(tx, settle.protest()).orElse(null);
        if (protest == null) {
            return Decision.unknown("There is no such protest; look again");
        }
        String how = settle.how().strip();
        Optional<Decision> wrong = protest.stillOpen()
                ? AttemptActions.wrongWords("how", how, "Say how it was settled, and by whom")
                : Optional.of(Decision.refused("how", "This protest is settled"));
        if (wrong.isPresent()) {
            return wrong.get();
        }
        return Decision.decided(
                AttemptActions.TOPICS,
                Fact.of("attempt.protested", protest.settle(how, context.now().toEpochMilli())));
    }

    static Decision reopen(Tx tx, ActContext context, Reopen reopen) {
        AttemptNow now = AttemptStore.find(tx, reopen.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        boolean wasFlown = now.state() == State.VOID && now.releasedAtMs() != null;
        if (now.state() != State.CLOSED && !wasFlown) {
            return Decision.refused(
                    PhaseGate.wrong(tx, context, now, "What is official, or void after its release, is opened again"));
        }
        String reason = reopen.reason().strip();
        Optional<Decision> wrong = AttemptActions.wrongWords("reason", reason, AttemptActions.SAY_WHY);
        if (wrong.isPresent()) {
            return wrong.get();
        }
        if (!reopen.pin() && !ResultRecord.signatures(tx, now.id()).given().isEmpty()) {
            return Decision.refused("pin", "What was signed is opened again with the coach's PIN");
        }
        var fact =
                new AttemptReopened(context.ownId(), now.id(), context.now().toEpochMilli(), reason, context.person());
        return new Decision.Decided(List.of(Fact.of("attempt.reopened", fact)), Map.of(), AttemptActions.TOPICS);
    }
}

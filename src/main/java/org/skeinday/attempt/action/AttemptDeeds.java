package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptMoved;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.CalledAttempt;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.PlannedAttempt;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.RightTeam;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WindingAttempt;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.standing.Scoring;

/** Calling an attempt, moving it on, giving it up. */
public final class AttemptDeeds {
    static final Set<String> TOPICS = Set.of("attempts");
    /** What the winding place is asked again goes with it. */
    private static final Set<String> CALLED = Set.of("attempts", "checks");
    /** A motor goes with the attempt. */
    static final Set<String> MOVED = Set.of("attempts", "motors");

    static final int LONGEST_REASON = 400;

    private AttemptDeeds() {}

    /**
     * Calls the next attempt of an entry.
     *
     * @param number of the attempt that the form offered
     */
    public record Call(
            String entry,
            @Nullable String model,
            @Nullable String motor,
            @Nullable Integer number) {}

    /**
     * Says that an attempt reached a state: winding, holding, released or landed.
     *
     * @param seen what the form showed, as {@link Seen} writes it
     */
    public record Move(String attempt, String to, @Nullable String seen) {}

    /** Gives an attempt up, with a reason. @param again whether after its release it is flown again and uses up nothing */
    public record GiveUp(
            String attempt,
            String reason,
            @Nullable String seen,
            @Nullable Boolean again) {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("attempt.call", Call.class, AttemptDeeds::call),
                new ActKind<>("attempt.move", Move.class, AttemptDeeds::move),
                new ActKind<>("attempt.take-back", TakeBack.Step.class, TakeBack::decide),
                new ActKind<>("attempt.give-up", GiveUp.class, AttemptDeeds::giveUp),
                new ActKind<>("attempt.announce", AnnounceTime.Announce.class, AnnounceTime::decide),
                new ActKind<>("watch.judge", JudgeWatch.Judge.class, JudgeWatch::decide),
                new ActKind<>("attempt.close", CloseAttempt.Close.class, CloseAttempt::decide));
    }

    static final String SAY_WHY = "Say why: it stays in the record";

    /** What is wrong with words that must be there and fit the record; empty when nothing is. */
    static Optional<Decision> wrongWords(String field, String words, String ifEmpty) {
        if (words.isEmpty()) {
            return Optional.of(Decision.refused(field, ifEmpty));
        }
        return words.length() > LONGEST_REASON
                ? Optional.of(Decision.refused(field, tooLong(words)))
                : Optional.empty();
    }

    static String tooLong(String reason) {
        return "A reason has at most " + LONGEST_REASON + " characters, this one has " + reason.length();
    }

    static Decision call(Tx tx, ActContext context, Call call) {
        EntryAdded entry = EntryStore.find(tx, call.entry()).orElse(null);
        if (entry == null) {
            return Decision.unknown("There is no such entry; choose one of the list");
        }
        @Nullable String model = emptyToNull(call.model());
        @Nullable String motor = emptyToNull(call.motor());
        Optional<Decision> foreign = notItsOwn(tx, entry, model, motor);
        if (foreign.isPresent()) {
            return foreign.get();
        }
        Optional<String> notFit = whyNotFlown(tx, motor);
        if (notFit.isPresent()) {
            return Decision.refused("motor", notFit.get());
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        List<AttemptNow> own = AttemptStore.ofEvent(tx, event.id()).stream()
                .filter(a -> a.entryId().equals(entry.id()))
                .toList();
        if (call.number() != null && call.number() != own.size() + 1) {
            return new Decision.Outdated("Someone else was quicker: " + entry.name() + "'s attempt " + own.size()
                    + " was called meanwhile. Look again, then decide.");
        }
        Optional<String> no = whyNoMore(entry, Scoring.of(event, FlightRulesStore.of(tx, event.id())), own);
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        var planned = new PlannedAttempt(context.newId(0), event.id(), entry.id(), own.size() + 1);
        List<Fact> facts = new ArrayList<>();
        long atMs = context.now().toEpochMilli();
        facts.add(Fact.of("attempt.called", planned.call(model, motor, atMs)));
        AttemptStore.lastAim(tx, entry.id())
                .ifPresent(last -> facts.add(Fact.of("attempt.aimed", last.of(planned.id()))));
        Optional.ofNullable(motor)
                .filter(id -> entry.own())
                .flatMap(id -> MotorStore.find(tx, id))
                .ifPresent(m -> facts.addAll(PlaceReopens.byMotor(tx, context, event.id(), m)));
        if (TermsStore.of(tx, event.id()).asksForQuiet()) {
            facts.add(Fact.of("quiet.began", new Quiet(planned.id(), atMs, null)));
        }
        return new Decision.Decided(facts, Map.of(), CALLED);
    }

    /** The list offers only what the entry may fly; a form may name anything. */
    private static Optional<Decision> notItsOwn(
            Tx tx, EntryAdded entry, @Nullable String model, @Nullable String motor) {
        Optional<String> wrongModel = model == null
                ? Optional.empty()
                : ModelStore.find(tx, model)
                        .map(m -> RightTeam.whyNot(entry, "model " + m.name(), m.team()))
                        .orElse(Optional.of("There is no such model; choose one of the list"));
        if (wrongModel.isPresent()) {
            return wrongModel.map(words -> Decision.refused("model", words));
        }
        return motor == null
                ? Optional.empty()
                : wrongMotor(tx, entry, motor).map(words -> Decision.refused("motor", words));
    }

    /** Why an entry may not fly with a motor, whoever asks for it; empty when it may. */
    public static Optional<String> wrongMotor(Tx tx, EntryAdded entry, String motor) {
        return MotorStore.find(tx, motor)
                .map(m -> RightTeam.whyNot(entry, "motor " + m.tag(), m.team()))
                .orElse(Optional.of("There is no such motor; choose one of the list"));
    }

    private static Optional<String> whyNotFlown(Tx tx, @Nullable String motor) {
        return motor == null ? Optional.empty() : MotorLifeStore.find(tx, motor).flatMap(MotorLife::whyNotFlown);
    }

    /** From here on others may help again, when they might not. */
    static List<Fact> withQuietEnded(Tx tx, String attempt, long atMs, Fact fact) {
        List<Fact> facts = new ArrayList<>(List.of(fact));
        AttemptStore.quietOf(tx, attempt)
                .ifPresent(q -> facts.add(Fact.of("quiet.ended", new Quiet(attempt, q.fromMs(), atMs))));
        return facts;
    }

    /** Why an entry cannot have another attempt now; empty when it can. @param own its attempts so far */
    public static Optional<String> whyNoMore(EntryAdded entry, Scoring scoring, List<AttemptNow> own) {
        for (AttemptNow attempt : own) {
            if (attempt.state().isOpen()) {
                return Optional.of(entry.name() + "'s attempt " + attempt.number() + " is still "
                        + attempt.state().word() + "; close it or give it up first");
            }
        }
        return OfficialFlights.tally(own, scoring).flightsLeft() > 0
                ? Optional.empty()
                : Optional.of(entry.name() + " has had its " + scoring.flights().flights()
                        + " attempts; the rules allow no more");
    }

    private static @Nullable String emptyToNull(@Nullable String text) {
        return text == null || text.isBlank() ? null : text;
    }

    /** When the form was opened the attempt stood elsewhere. */
    static Optional<Decision> outdated(@Nullable String seen, AttemptNow now) {
        return Seen.parse(seen).flatMap(then -> then.moved(now.state())).map(Decision.Outdated::new);
    }

    static Decision move(Tx tx, ActContext context, Move move) {
        AttemptNow now = AttemptStore.find(tx, move.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        Optional<Decision> outdated = outdated(move.seen(), now);
        if (outdated.isPresent()) {
            return outdated.get();
        }
        if (move.to().equals(State.WINDING.word())) {
            Optional<String> notFit = whyNotFlown(tx, now.motorId());
            if (notFit.isPresent()) {
                return Decision.refused(notFit.get());
            }
            Optional<String> waits = now.state() == State.CALLED ? WindingGate.refused(tx, now) : Optional.empty();
            if (waits.isPresent()) {
                return Decision.refused(WindingGate.FIELD, waits.get());
            }
        }
        return moved(Attempt.of(now), move.to(), context.now().toEpochMilli())
                .<Decision>map(fact -> withMotor(tx, context, now, fact))
                .orElseGet(() -> Decision.refused(
                        "An attempt that is " + now.state().word() + " cannot become '" + move.to() + "'"));
    }

    private static Decision withMotor(Tx tx, ActContext context, AttemptNow attempt, AttemptMoved fact) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("attempt.moved", fact)));
        MotorGoes.with(tx, context, attempt, State.of(fact.state()), fact.atMs())
                .ifPresent(facts::add);
        return new Decision.Decided(facts, Map.of(), MOVED);
    }

    /** Empty when no move leads from this state to that word. */
    private static Optional<AttemptMoved> moved(Attempt attempt, String to, long atMs) {
        return Optional.ofNullable(
                switch (to) {
                    case "winding" -> attempt instanceof CalledAttempt called ? called.startWinding(atMs) : null;
                    case "holding" -> attempt instanceof WindingAttempt winding ? winding.hold(atMs) : null;
                    case "released" -> attempt instanceof Attempt.BeforeRelease before ? before.release(atMs) : null;
                    case "landed" -> attempt instanceof ReleasedAttempt released ? released.land(atMs) : null;
                    default -> null;
                });
    }

    private static Decision ended(Tx tx, AttemptNow attempt, long atMs, Fact fact) {
        return new Decision.Decided(withQuietEnded(tx, attempt.id(), atMs, fact), Map.of(), TOPICS);
    }

    static Decision giveUp(Tx tx, ActContext context, GiveUp giveUp) {
        AttemptNow now = AttemptStore.find(tx, giveUp.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        Optional<Decision> outdated = outdated(giveUp.seen(), now);
        if (outdated.isPresent()) {
            return outdated.get();
        }
        String reason = giveUp.reason().strip();
        Optional<Decision> wrong = wrongWords("reason", reason, SAY_WHY);
        if (wrong.isPresent()) {
            return wrong.get();
        }
        long atMs = context.now().toEpochMilli();
        Attempt attempt = Attempt.of(now);
        if (attempt instanceof Attempt.BeforeRelease before) {
            return ended(tx, now, atMs, Fact.of("attempt.given-up", before.scrub(atMs, reason)));
        }
        if (attempt instanceof Attempt.AfterRelease after) {
            return ended(
                    tx,
                    now,
                    atMs,
                    Fact.of(
                            "attempt.given-up",
                            Boolean.TRUE.equals(giveUp.again())
                                    ? after.declareVoid(atMs, reason).again()
                                    : after.declareVoid(atMs, reason)));
        }
        return Decision.refused("An attempt that is " + now.state().word() + " cannot be given up");
    }
}

package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** What is done to attempts, from the call to the official time; what these deeds have in common. */
public final class AttemptActions {
    static final Set<String> TOPICS = Set.of("attempts");
    /** A motor goes with the attempt. */
    static final Set<String> MOVED = Set.of("attempts", "motors");

    public static final int LONGEST_REASON = 400;

    private AttemptActions() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        var quicker = new Quicker(people);
        return List.of(
                quicker.told("attempt.call", CallAttempt.Call.class, CallAttempt::decide, CallAttempt::lastOfEntry),
                quicker.told("attempt.move", MoveAttempt.Move.class, MoveAttempt::decide, MoveAttempt.Move::attempt),
                quicker.told("attempt.more-turns", MoreTurns.More.class, MoreTurns::decide, MoreTurns.More::attempt),
                quicker.told("attempt.some-off", SomeOff.Told.class, SomeOff::decide, SomeOff.Told::attempt),
                quicker.told("attempt.take-back", TakeBack.Step.class, TakeBack::decide, TakeBack.Step::attempt),
                quicker.told(
                        "attempt.give-up",
                        GiveUpAttempt.GiveUp.class,
                        GiveUpAttempt::decide,
                        GiveUpAttempt.GiveUp::attempt),
                quicker.told("attempt.broke", BreakMotor.Broke.class, BreakMotor::broke, BreakMotor.Broke::attempt),
                quicker.told(
                        "attempt.not-broken",
                        BreakMotor.NotBroken.class,
                        BreakMotor::notBroken,
                        BreakMotor.NotBroken::attempt),
                quicker.told("attempt.people-safe", BreakMotor.Safe.class, BreakMotor::safe, BreakMotor.Safe::attempt),
                quicker.told("motor.run-back", RunBackAlone.Told.class, RunBackAlone::decide, RunBackAlone.Told::motor),
                quicker.told("attempt.parted", BreakMotor.Parted.class, BreakMotor::parted, BreakMotor.Parted::attempt),
                quicker.told(
                        "attempt.run-back", RunBackMotor.Told.class, RunBackMotor::decide, RunBackMotor.Told::attempt),
                new ActKind<>("attempt.aloft", AloftActions.Say.class, AloftActions::decide),
                quicker.told(
                        "attempt.announce",
                        AnnounceTime.Announce.class,
                        AnnounceTime::decide,
                        a -> SaidMeanwhile.announced(a.attempt())),
                new ActKind<>("attempt.motor-was", CorrectMotor.Flown.class, CorrectMotor::decide),
                quicker.told("hall.stop", StopHall.Stop.class, StopHall::stop, (tx, stop) -> StopHall.ofDay(tx)),
                quicker.told("hall.resume", StopHall.Resume.class, StopHall::resume, (tx, stop) -> StopHall.ofDay(tx)),
                quicker.told(
                        "attempt.name-hands",
                        NameHands.Named.class,
                        NameHands::decide,
                        n -> SaidMeanwhile.hands(n.entry(), n.number())),
                quicker.told(
                        "watch.type",
                        TypeWatchTime.Typed.class,
                        TypeWatchTime::decide,
                        t -> SaidMeanwhile.watch(t.attempt(), t.slot())),
                quicker.told("watch.judge", JudgeWatch.Judge.class, JudgeWatch::decide, JudgeWatch.Judge::attempt),
                quicker.told(
                        "attempt.close", CloseAttempt.Close.class, CloseAttempt::decide, CloseAttempt.Close::attempt));
    }

    static final String SAY_WHY = "Say why: it stays in the record";

    /** What is wrong with words that must be there and fit the record; empty when nothing is. */
    public static Optional<Decision> wrongWords(String field, String words, String ifEmpty) {
        if (words.isEmpty()) {
            return Optional.of(Decision.refused(field, ifEmpty));
        }
        return words.length() > LONGEST_REASON
                ? Optional.of(Decision.refused(field, tooLong(words)))
                : Optional.empty();
    }

    public static String tooLong(String reason) {
        return "A reason has at most " + LONGEST_REASON + " characters, this one has " + reason.length();
    }

    /** From here on others may help again, when they might not. */
    static List<Fact> withQuietEnded(Tx tx, String attempt, long atMs, Fact fact) {
        List<Fact> facts = new ArrayList<>(List.of(fact));
        AttemptStore.quietOf(tx, attempt)
                .ifPresent(q -> facts.add(Fact.of("quiet.ended", new Quiet(attempt, q.fromMs(), atMs))));
        return facts;
    }

    /** When the form was opened the attempt stood elsewhere. */
    static Optional<Decision> outdated(@Nullable String seen, AttemptEvidence known) {
        return Seen.parse(seen)
                .flatMap(then -> then.moved(known.now().state(), LiveAttempt.of(known)))
                .map(Decision.Outdated::new);
    }
}

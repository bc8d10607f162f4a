package org.skeinday.paper.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.action.CameFrom;
import org.skeinday.attempt.action.HandsThen;
import org.skeinday.attempt.action.PhaseGate;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.FlightWindows;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.exchange.DayFiles;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/** A card of an attempt that the program knows, and that is not over: it is gone on with to its end as the card says. */
final class CompleteAttempt {
    private final Tx tx;
    private final ActContext context;
    private final AttemptNow now;

    CompleteAttempt(Tx tx, ActContext context, AttemptNow now) {
        this.tx = tx;
        this.context = context;
        this.now = now;
    }

    /** The attempt of this number that is not over. @param number of the rules, as typed */
    static Optional<AttemptNow> find(Tx tx, EntryAdded entry, String number) {
        return AttemptStore.ofEvent(tx, entry.eventId()).stream()
                .filter(a -> a.entryId().equals(entry.id()) && a.state().isOpen())
                .filter(a -> String.valueOf(a.number().rule()).equals(number.strip()))
                .findFirst();
    }

    /** The ids of what the card's row makes: the attempt is the one that is there. */
    static Supplier<String> ids(ActContext context, Optional<AttemptNow> known) {
        List<String> first = new ArrayList<>(known.map(AttemptNow::id).stream().toList());
        return () -> first.isEmpty() ? context.nextId() : first.remove(0);
    }

    /** @param read the card as a row, read for this attempt's id */
    List<Fact> facts(DayFiles.Read read) {
        List<Fact> facts = new ArrayList<>();
        for (DayFiles.Named named : read.facts()) {
            if (named.body() instanceof AttemptImported card) {
                facts.addAll(upToTheLanding(card));
            } else if (named.body() instanceof AttemptNoted noted) {
                facts.add(Fact.of(named.kind(), noted.over(AttemptStore.note(tx, now.id()))));
            } else {
                facts.add(Fact.of(named.kind(), named.body()));
            }
        }
        facts.addAll(cameFrom(read));
        AttemptStore.quietOf(tx, now.id())
                .ifPresent(q -> facts.add(Fact.of(
                        "quiet.ended",
                        new Quiet(now.id(), q.fromMs(), context.now().toEpochMilli()))));
        facts.add(PhaseGate.acted(context, now.id(), AttemptAct.CLOSE));
        return facts;
    }

    /** What the card says is from the card; what was known before and stands was typed, where nobody said otherwise. */
    private List<Fact> cameFrom(DayFiles.Read read) {
        Flight before = FlownStore.find(tx, now.id()).orElse(null);
        if (before == null) {
            return List.of();
        }
        Flight card = CardFlight.told(read, before.ratio());
        Flight after = before;
        List<Fact> facts = new ArrayList<>();
        for (Measured what : Measured.values()) {
            Double number = before.number(what);
            if (card.number(what) != null) {
                after = after.with(what, card.number(what));
            }
            if (number != null
                    && number.equals(after.number(what))
                    && before.said().marks().of(what, number).isEmpty()) {
                facts.add(CameFrom.mark(context, now.id(), what, number, Source.TYPED));
            }
        }
        facts.addAll(CameFrom.changed(context, before, after, Source.CARD));
        return facts;
    }

    /** When it was released and landed no card says: where nobody tapped it, now. */
    private List<Fact> upToTheLanding(AttemptImported card) {
        List<Fact> facts = new ArrayList<>();
        long atMs = context.now().toEpochMilli();
        Attempt attempt = Attempt.of(now);
        if (attempt instanceof Attempt.BeforeRelease before) {
            facts.addAll(HandsThen.kept(tx, now));
            String motor = card.motorId();
            if (motor != null && !motor.equals(now.motorId())) {
                facts.add(Fact.of("attempt.motor", before.take(motor, atMs)));
            }
            facts.add(Fact.of("attempt.moved", before.release(atMs)));
            facts.add(FlightWindows.kept(tx, now, atMs));
            attempt = new ReleasedAttempt(now.id());
        }
        if (attempt instanceof ReleasedAttempt released) {
            facts.add(Fact.of("attempt.moved", released.land(atMs)));
        }
        Optional.ofNullable(wound(card)).ifPresent(wound -> facts.add(Fact.of("attempt.wound", wound)));
        return facts;
    }

    private @Nullable AttemptWound wound(AttemptImported card) {
        Integer stop = card.stopCountCrankTurns();
        return stop == null ? null : new AttemptWound(now.id(), stop, card.launchTorqueNmm(), card.launchTorqueTyped());
    }
}

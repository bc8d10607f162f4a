package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.PlannedAttempt;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.standing.Scoring;

/** Calls an attempt, with what it brings: the aim of the last one, what the motor asks for again, the quiet. */
public final class CallAttempt {
    /** What the winding place is asked again goes with it. */
    private static final Set<String> CALLED = Set.of("attempts", "checks");

    private CallAttempt() {}

    /**
     * Calls the next attempt of an entry.
     *
     * @param number of the attempt that the form offered
     * @param meant ids of motors, parted by spaces, of which the form said that the plan means them for another entry
     */
    public record Call(
            String entry,
            @Nullable String model,
            @Nullable String motor,
            @Nullable Integer number,
            @Nullable String meant) {}

    static Decision decide(Tx tx, ActContext context, Call call) {
        EntryAdded entry = EntryStore.find(tx, call.entry()).orElse(null);
        if (entry == null) {
            return Decision.unknown("There is no such entry; choose one of the list");
        }
        @Nullable String model = emptyToNull(call.model());
        @Nullable String motor = emptyToNull(call.motor());
        Optional<Decision> foreign = WhyNotFly.notItsOwn(tx, entry, model, motor);
        if (foreign.isPresent()) {
            return foreign.get();
        }
        Optional<String> notFit = WhyNotFly.whyNotFlown(tx, motor);
        if (notFit.isPresent()) {
            return Decision.refused("motor", notFit.get());
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        if (EventStore.next(tx).filter(e -> e.id().equals(event.id())).isEmpty()) {
            return new Decision.Outdated("People work on another event now. Look again, then decide.");
        }
        Optional<Decision> stopped = StopHall.refused(tx, event.id());
        if (stopped.isPresent()) {
            return stopped.get();
        }
        List<AttemptNow> attempts = AttemptStore.ofEvent(tx, event.id());
        List<AttemptNow> own =
                attempts.stream().filter(a -> a.entryId().equals(entry.id())).toList();
        if (call.number() != null && call.number() != own.size() + 1) {
            return new Decision.Outdated(
                    own.isEmpty()
                            ? "No attempt of " + entry.name() + " was called yet. Look again, then decide."
                            : "Someone else was quicker: " + entry.name() + "'s "
                                    + own.get(own.size() - 1).number().words()
                                    + " was called meanwhile. Look again, then decide.");
        }
        Optional<String> no =
                WhyNotFly.whyNoMore(tx, entry, Scoring.of(event, FlightRulesStore.of(tx, event.id())), own);
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        Optional<String> notReady = WhyNotFly.notReady(tx, event.id(), motor);
        if (notReady.isPresent()) {
            return Decision.refused("motor", notReady.get());
        }
        Optional<String> another = PlannedForAnother.asked(tx, entry, motor, call.meant());
        if (another.isPresent()) {
            return Decision.refused("motor", another.get());
        }
        var planned = new PlannedAttempt(context.ownId(), event.id(), entry.id(), own.size() + 1);
        List<Fact> facts = new ArrayList<>();
        long atMs = context.now().toEpochMilli();
        facts.add(Fact.of("attempt.called", planned.call(model, motor, atMs)));
        facts.add(PhaseGate.acted(context, planned.id(), AttemptAct.CALL));
        facts.addAll(KeptWatches.at(tx, context, event, entry, attempts, planned.id()));
        Optional<StationAdded> station = entry.own() ? Stations.of(tx, entry, planned.id()) : Optional.empty();
        facts.addAll(ChooseStation.stays(planned.id(), station));
        AttemptStore.lastAim(tx, entry.id())
                .ifPresent(last -> facts.add(Fact.of("attempt.aimed", last.of(planned.id()))));
        Optional.ofNullable(motor)
                .filter(id -> entry.own())
                .flatMap(id -> MotorStore.find(tx, id))
                .ifPresent(m -> facts.addAll(PlaceReopens.byMotor(tx, context, event.id(), m, station)));
        if (TermsStore.of(tx, event.id()).asksForQuiet()) {
            facts.add(Fact.of("quiet.began", new Quiet(planned.id(), atMs, null)));
        }
        return new Decision.Decided(facts, Map.of(), CALLED);
    }

    /** Id of what somebody else may have called meanwhile; empty where there is none. */
    static String lastOfEntry(Tx tx, Call call) {
        return EntryStore.find(tx, call.entry()).stream()
                .flatMap(entry -> AttemptStore.ofEvent(tx, entry.eventId()).stream())
                .filter(a -> a.entryId().equals(call.entry()))
                .reduce((a, b) -> b.number().running() > a.number().running() ? b : a)
                .map(AttemptNow::id)
                .orElse("");
    }

    private static @Nullable String emptyToNull(@Nullable String text) {
        return text == null || text.isBlank() ? null : text;
    }
}

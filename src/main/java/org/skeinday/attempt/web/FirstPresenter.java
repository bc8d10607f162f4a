package org.skeinday.attempt.web;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.WoundAlone;
import org.skeinday.attempt.store.WoundBeside;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;

/** Finds what comes before anything else. Three queries while there is nothing, which is nearly always. */
final class FirstPresenter {
    private FirstPresenter() {}

    static List<FirstView.Item> items(Tx tx) {
        return Stream.concat(
                        EventStore.next(tx).stream()
                                .flatMap(event -> Stream.concat(
                                        mayComeFirst(tx, event.id())
                                                .flatMap(id -> LiveAttempts.evidence(tx, id).stream())
                                                .flatMap(known -> item(tx, known).stream()),
                                        changed(tx, event.id()))),
                        alone(tx))
                .toList();
    }

    /** While the hall stands still, what was wound on the bench or for practice is run back too, with or without an event. */
    private static Stream<FirstView.Item> alone(Tx tx) {
        return HallStops.now(tx).stream()
                .flatMap(stop -> WoundAlone.since(tx, stop).stream())
                .map(wound -> new FirstView.Item(
                        FirstView.Ask.RUN_BACK,
                        "",
                        wound.motor().id(),
                        "Motor " + wound.motor().tag() + ", without an attempt",
                        wound.isOnlyCranked(),
                        false));
    }

    /** Wound for an attempt that has another motor by now, whether the hall goes on or not. */
    private static Stream<FirstView.Item> changed(Tx tx, String event) {
        return WoundBeside.now(tx, event).stream()
                .flatMap(wound -> LiveAttempts.find(tx, wound.attempt()).stream()
                        .map(live -> new FirstView.Item(
                                FirstView.Ask.RUN_BACK,
                                "",
                                wound.motor(),
                                title(tx, live, wound.motor()) + ", changed for another",
                                true,
                                true)));
    }

    /** Null while the hall goes on. */
    static FirstView.@Nullable Stop stop(Tx tx, boolean mayResume) {
        return HallStops.now(tx)
                .map(stop -> new FirstView.Stop(stop.id(), stop.why(), stop.atMs(), mayResume))
                .orElse(null);
    }

    /** While the hall stands still, all that is wound too: it is run back. */
    private static Stream<String> mayComeFirst(Tx tx, String event) {
        Stream<String> first = BreakRecord.mayComeFirst(tx, event).stream();
        return HallStops.now(tx, event).isEmpty()
                ? first
                : Stream.concat(first, BreakRecord.wound(tx, event).stream()).distinct();
    }

    private static Optional<FirstView.Item> item(Tx tx, AttemptEvidence known) {
        LiveAttempt live = LiveAttempt.of(known);
        String motor = live.motorId();
        boolean askWhere =
                known.brokeInTheAir() && motor != null && known.breakOf(motor).where() == null;
        FirstView.@Nullable Ask ask = askWhere ? FirstView.Ask.WHERE : ask(live.phase());
        return ask == null
                ? Optional.empty()
                : Optional.of(new FirstView.Item(
                        ask, live.id(), String.valueOf(live.motorId()), title(tx, live, live.motorId()), false, false));
    }

    private static FirstView.@Nullable Ask ask(AttemptPhase phase) {
        if (phase instanceof AttemptPhase.Broke broke) {
            return !broke.peopleSafe() ? FirstView.Ask.PEOPLE_SAFE : broke.where() == null ? FirstView.Ask.WHERE : null;
        }
        return switch (phase.name()) {
            case RUN_BACK, WINDING, HOLDING ->
                FirstView.Ask.RUN_BACK; // these two come here while the hall is stopped only
            default -> null;
        };
    }

    private static String title(Tx tx, LiveAttempt live, @Nullable String motorId) {
        String entry = EntryStore.find(tx, live.entryId()).map(EntryAdded::name).orElse("an entry");
        String motor = Optional.ofNullable(motorId)
                .flatMap(id -> MotorStore.find(tx, id))
                .map(MotorAdded::tag)
                .map(tag -> ", motor " + tag)
                .orElse("");
        return entry + ", " + live.number().words() + motor;
    }
}

package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Where more than one winding place is prepared, an attempt is wound at one of them: chosen before its first crank turn. */
public final class ChooseStation {
    /**
     * What somebody chose.
     *
     * @param station id of the winding place
     * @param seen id of the place that the page showed as its own; null from a page that does not say it
     * @param beside ids of the attempts that the page showed to be there, parted by blanks; null as before
     */
    record Chosen(
            String attempt,
            String station,
            @Nullable String seen,
            @Nullable String beside) {}

    private ChooseStation() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(new Quicker(people)
                .told("attempt.station", Chosen.class, ChooseStation::decide, ChooseStation::whoseActTells));
    }

    static Decision decide(Tx tx, ActContext context, Chosen chosen) {
        AttemptNow now = AttemptStore.find(tx, chosen.attempt()).orElse(null);
        StationAdded to = StationStore.all(tx).stream()
                .filter(s -> s.id().equals(chosen.station()))
                .findFirst()
                .orElse(null);
        if (now == null || to == null) {
            return Decision.unknown("There is no such attempt or winding place; look again");
        }
        if (now.state() != State.CALLED) {
            return PhaseGate.wrongNow(tx, context, now, "The winding place is chosen before the first crank turn");
        }
        Optional<Decision> quicker = movedMeanwhile(tx, now, to, chosen).or(() -> takenMeanwhile(tx, now, to, chosen));
        if (quicker.isPresent()) {
            return quicker.get();
        }
        List<Fact> facts = new ArrayList<>(stays(now.id(), Optional.of(to)));
        if (at(tx, now).filter(s -> s.id().equals(to.id())).isPresent()) {
            return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
        }
        facts.add(PhaseGate.acted(context, now.id(), "Another winding place"));
        facts.addAll(AsksAgain.beforeWinding(tx, context, now.id(), AsksAgain.OTHER_PLACE));
        Optional.ofNullable(now.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .ifPresent(m -> facts.addAll(PlaceReopens.byMotor(tx, context, now.eventId(), m, Optional.of(to))));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    /** Somebody else has chosen another place for it than the page showed. */
    private static Optional<Decision> movedMeanwhile(Tx tx, AttemptNow now, StationAdded to, Chosen chosen) {
        return at(tx, now)
                .filter(at -> chosen.seen() != null && !at.id().equals(chosen.seen()))
                .filter(at -> !at.id().equals(to.id()))
                .map(at -> new Decision.Outdated(
                        title(tx, now) + " was moved to " + at.name() + " meanwhile. Look again, then decide."));
    }

    /** Somebody else has taken the place for another attempt than the page showed. */
    private static Optional<Decision> takenMeanwhile(Tx tx, AttemptNow now, StationAdded to, Chosen chosen) {
        return newThere(tx, now, to, chosen)
                .map(other -> new Decision.Outdated(
                        to.name() + " was taken for " + title(tx, other) + " meanwhile. Look again, then decide."));
    }

    private static Optional<AttemptNow> newThere(Tx tx, AttemptNow now, StationAdded to, Chosen chosen) {
        String beside = chosen.beside();
        if (beside == null || at(tx, now).filter(to::equals).isPresent()) {
            return Optional.empty();
        }
        List<String> shown = List.of(beside.split(" "));
        return Stations.in(tx, now.eventId()).openAt(to, now).stream()
                .filter(other -> !shown.contains(other))
                .findFirst()
                .flatMap(other -> AttemptStore.find(tx, other));
    }

    /** Of the attempt that took the place, else of this one. */
    private static String whoseActTells(Tx tx, Chosen chosen) {
        return AttemptStore.find(tx, chosen.attempt())
                .filter(now -> now.state() == State.CALLED)
                .flatMap(now -> StationStore.all(tx).stream()
                        .filter(station -> station.id().equals(chosen.station()))
                        .findFirst()
                        .filter(to -> movedMeanwhile(tx, now, to, chosen).isEmpty())
                        .flatMap(to -> newThere(tx, now, to, chosen)))
                .map(AttemptNow::id)
                .orElse(chosen.attempt());
    }

    private static String title(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).orElseThrow().name() + ", "
                + attempt.number().words();
    }

    /** From the call on the place stays, whatever becomes free: crank turns that nobody read are of its winder. */
    public static List<Fact> stays(String attempt, Optional<StationAdded> station) {
        return station.map(at -> Fact.of("attempt.station", AttemptStation.of(attempt, at))).stream()
                .toList();
    }

    static List<Fact> stays(Tx tx, AttemptNow now) {
        return stays(now.id(), at(tx, now));
    }

    private static Optional<StationAdded> at(Tx tx, AttemptNow now) {
        return AttemptsWoundAt.of(tx, now);
    }
}

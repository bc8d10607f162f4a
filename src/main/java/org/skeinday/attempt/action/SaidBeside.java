package org.skeinday.attempt.action;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.StationCheck;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.ModelSubject;
import org.skeinday.steps.PlaceSubject;
import org.skeinday.steps.Step;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.UnitSystem;

/** Values of the day's lists that belong to a winding place or to a model. */
final class SaidBeside {
    private static final Set<String> TOPICS = Set.of("contest", "places");
    /** A tape along a floor says it no better, mm (own default). */
    private static final double TAPE_MM = 50;
    /** A checked ratio differs by less than this from the one on record, as a share (own default). */
    private static final double SAME_RATIO = 0.001;

    private SaidBeside() {}

    /** @param subject of a model's list a {@link ModelSubject}, of a winding place's a {@link PlaceSubject} */
    static Optional<Decision> of(Tx tx, ActContext context, String subject, Step step, String answer) {
        return switch (step.answer()) {
            case NEWTONS -> pulled(tx, context, station(tx, subject), Double.parseDouble(answer));
            case LANE_LENGTH -> lane(tx, Length.parse(answer));
            case RATIO -> ratio(context, station(tx, subject), answer);
            case MASS ->
                ModelSubject.parse(subject)
                        .flatMap(about ->
                                ModelStore.find(tx, about.modelId()).filter(model -> isOwn(tx, about.eventId(), model)))
                        .flatMap(model -> weighed(model, answer));
            default -> Optional.empty();
        };
    }

    /** The winding place that the list is about; of any other list the one at work. */
    static Optional<StationAdded> station(Tx tx, String subject) {
        String of = PlaceSubject.parse(subject).map(PlaceSubject::stationId).orElse("");
        return of.isEmpty() || ModelStore.find(tx, of).isPresent()
                ? StationStore.atWork(tx)
                : StationStore.all(tx).stream()
                        .filter(station -> station.id().equals(of))
                        .findFirst();
    }

    /** Of an own entry of the event that the list is of: a made-up subject weighs nobody's model. */
    private static boolean isOwn(Tx tx, String event, ModelAdded model) {
        return EntryStore.ofEvent(tx, event).stream()
                .filter(EntryAdded::own)
                .flatMap(entry -> ModelStore.ofEntry(tx, entry.id()).stream())
                .anyMatch(model::equals);
    }

    /** Too little is no pull test; enough is noted of the winding place. */
    private static Optional<Decision> pulled(Tx tx, ActContext context, Optional<StationAdded> at, double newtons) {
        double least = TodaysPull.testNewtons(tx).orElse(StationCheck.USUAL_PULL_N);
        if (newtons < least) {
            return Optional.of(Decision.refused(
                    "answer",
                    "The mount must hold " + Math.round(least) + " N today; pull it with as much, or mend it"));
        }
        return at.map(station -> noted(Fact.of(
                "station.changed", station.pulled(newtons, context.today().toString()))));
    }

    /** Another ratio than on record would make every plan wrong: it is set where the winder is described. */
    static Optional<Decision> ratio(ActContext context, Optional<StationAdded> at, String answer) {
        double said = Double.parseDouble(answer);
        StationAdded station = at.orElse(null);
        if (station == null || station.winderRatio() == null) {
            return Optional.empty();
        }
        if (Math.abs(said / station.winderRatio() - 1) > SAME_RATIO) {
            return Optional.of(Decision.refused(
                    "answer",
                    "The winder of " + station.name() + " is on record with " + PlainNumber.of(station.winderRatio())
                            + " to 1: turn the crank once and count again, or set its ratio in Prepare"));
        }
        return Optional.of(noted(
                Fact.of("station.changed", station.ratioChecked(context.today().toString()))));
    }

    private static Optional<Decision> lane(Tx tx, Length said) {
        PlaceMeasured place = PlaceStore.inUse(tx).orElse(null);
        return place == null || Math.abs(place.laneMm() - said.millimetres()) <= TAPE_MM
                ? Optional.empty()
                : Optional.of(Decision.refused(
                        "answer",
                        "The page Hall has this lane with "
                                + UnitSystem.METRIC.room(Length.ofMillimetres(place.laneMm()))
                                + ": measure again, or put it right there"));
    }

    private static Optional<Decision> weighed(ModelAdded model, String typed) {
        return Optional.of(
                noted(Fact.of("model.changed", model.weighed(Mass.parse(typed).grams(), typed.strip()))));
    }

    private static Decision noted(Fact fact) {
        return new Decision.Decided(java.util.List.of(fact), Map.of(), TOPICS);
    }
}

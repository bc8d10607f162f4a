package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.MotorChoice;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.winding.WindingPolicy;

/** Which motors an entry may fly with now, in one order on every page: Now, Bench, Day, the choice, the printed card. */
public final class MotorsAtHand {
    private static final FlightForecast NO_MODEL = new FlightForecast.NotKnown("no model is named");

    private static final FlightForecast NO_FORECAST =
            new FlightForecast.NotKnown("it cannot be computed just now, the log has the reason");

    private final Tx tx;
    private final List<MotorLife> motors;
    private final MotorUses uses;
    private final ForecastFlights flights;

    /** @param reason of its place among them, in words */
    record Offer(MotorAdded motor, int uses, String reason) {}

    /** Reads the motors once, for every entry that is asked about. */
    public MotorsAtHand(Tx tx) {
        this.tx = tx;
        this.motors = MotorLifeStore.all(tx).stream()
                .filter(life -> !life.stage().isOut() && life.stage() != MotorStage.GRITTY)
                .toList();
        this.uses = MotorUseStore.all(tx);
        this.flights = new ForecastFlights(tx, uses);
    }

    /** Those that it may fly with when its window comes: as {@link #of}, and those that are handed in until then. */
    public List<MotorLife> planned(EntryAdded entry, List<ModelAdded> models) {
        return ranked(entry, models, motors).stream().map(Ranked::life).toList();
    }

    /** The same for a page that people work on: none where it cannot be found out, which the log then says why. */
    static List<Offer> offersOrNone(Tx tx, EntryAdded entry, List<ModelAdded> models) {
        return Apart.made(
                "Which motors may be flown", () -> new MotorsAtHand(tx).offers(entry, models), words -> List.of());
    }

    private record Ranked(MotorLife life, String reason) {}

    /** As {@link #offers}, the motors alone. */
    public List<MotorAdded> of(EntryAdded entry, List<ModelAdded> models) {
        return offers(entry, models).stream().map(Offer::motor).toList();
    }

    /**
     * Those that it has declared, else the team's, that can be flown (not handed in, gritty, broken, lost or retired; not
     * wound, not just flown, in no attempt's hand) and turn the right way: first the one that the plan in force has for its
     * next attempt, then as {@link MotorChoice} ranks them.
     */
    List<Offer> offers(EntryAdded entry, List<ModelAdded> models) {
        Set<String> inHand = MotorsInHand.byMotor(tx, entry.eventId()).keySet();
        List<MotorLife> free = motors.stream()
                .filter(life -> life.whyNotFlown().isEmpty())
                .filter(life -> !life.stage().isLoaded() && life.stage() != MotorStage.FLOWN)
                .filter(life -> !inHand.contains(life.motor().id()))
                .toList();
        List<Offer> offers = new ArrayList<>(ranked(entry, models, free).stream()
                .map(r -> offer(r.life().motor(), r.reason()))
                .toList());
        Assignments.plannedMotor(tx, entry, AttemptNumbers.next(tx, entry)).ifPresent(tag -> first(offers, tag));
        return offers;
    }

    /** The plan of the day comes before what would be best by itself. */
    private static void first(List<Offer> offers, String planned) {
        for (int i = 0; i < offers.size(); i++) {
            if (offers.get(i).motor().tag().equals(planned)) {
                offers.add(0, offers.remove(i));
                return;
            }
        }
    }

    private List<Ranked> ranked(EntryAdded entry, List<ModelAdded> models, List<MotorLife> among) {
        List<String> declared = EntryStore.motorsOf(tx, entry.id());
        Map<String, MotorLife> lives = new LinkedHashMap<>();
        among.stream()
                .filter(life -> life.motor().team().equals(entry.team()))
                .filter(life ->
                        declared.isEmpty() || declared.contains(life.motor().id()))
                .filter(life -> models.isEmpty() || models.stream().anyMatch(m -> fits(m, life.motor())))
                .sorted(Comparator.comparing(life -> life.motor().tag()))
                .forEach(life -> lives.put(life.motor().id(), life));
        List<MotorChoice.Candidate> candidates = new ArrayList<>();
        lives.values().forEach(life -> candidates.add(candidate(life, models)));
        return MotorChoice.rank(candidates).stream()
                .map(r -> new Ranked(Objects.requireNonNull(lives.get(r.motorId())), r.reason()))
                .toList();
    }

    private Offer offer(MotorAdded motor, String reason) {
        return new Offer(motor, uses.of(motor.id()), reason);
    }

    private MotorChoice.Candidate candidate(MotorLife life, List<ModelAdded> models) {
        MotorAdded motor = life.motor();
        int had = uses.of(motor.id());
        FlightForecast forecast = models.stream()
                .filter(m -> fits(m, motor))
                .findFirst()
                .map(m -> Apart.made(
                        "The forecast for motor " + motor.tag(),
                        () -> flights.forecast(m, motor, had + 1),
                        words -> NO_FORECAST))
                .orElse(NO_MODEL);
        return new MotorChoice.Candidate(motor.id(), true, "", waits(life), had, WindingPolicy.MOST_USES, forecast);
    }

    private static boolean fits(ModelAdded model, MotorAdded motor) {
        return model.turns() == motor.turns();
    }

    /** What it still waits for; empty when it may be wound at once. */
    private static String waits(MotorLife life) {
        return switch (life.stage()) {
            case READY, RETIRED, BROKEN, LOST -> "";
            default -> life.stage().word();
        };
    }
}

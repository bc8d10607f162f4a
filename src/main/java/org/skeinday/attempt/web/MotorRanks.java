package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.MotorChoice;
import org.skeinday.attempt.MotorUses;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.winding.WindingPolicy;

/** Motors of an entry in the order in which they would be flown, by what its season forecasts of each. */
final class MotorRanks {
    private static final FlightForecast NO_MODEL = new FlightForecast.NotKnown("no model is named");

    private static final FlightForecast NO_FORECAST =
            new FlightForecast.NotKnown("it cannot be computed just now, the log has the reason");

    private final Tx tx;
    private final MotorUses uses;
    private final ForecastFlights flights;

    MotorRanks(Tx tx, MotorUses uses) {
        this.tx = tx;
        this.uses = uses;
        this.flights = new ForecastFlights(tx, uses);
    }

    /** @param reason of its place among them, in words */
    record Ranked(MotorLife life, String reason) {}

    /** Its own, or where it has declared none the team's, that turn as one of its models does. */
    List<Ranked> of(EntryAdded entry, List<ModelAdded> models, List<MotorLife> among) {
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

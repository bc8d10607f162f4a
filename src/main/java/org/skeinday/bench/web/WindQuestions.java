package org.skeinday.bench.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.bench.action.JudgeWind;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.NotCounted;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.PlainNumber;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.store.CountedTurns;
import org.skeinday.winding.store.WindWorth;

/** Which winds wait for a word, and for which. */
public final class WindQuestions {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d.M. HH:mm");

    private final Tx tx;
    private final ZoneId zone;
    private final WindWorth worth;

    public WindQuestions(Tx tx, ZoneId zone) {
        this.tx = tx;
        this.zone = zone;
        this.worth = new WindWorth(tx);
    }

    /** All of them, the oldest first. @param flights that ask about their own turns */
    public List<WindQuestion> open(Set<String> flights) {
        return worth.toAsk(tx).stream()
                .flatMap(wind -> open(wind, flights).stream())
                .toList();
    }

    private List<WindQuestion> open(Wind wind, Set<String> flights) {
        boolean ofFlight = wind.broke().isEmpty()
                && flights.contains(String.valueOf(wind.begun().attemptId()));
        List<String> asked = new ArrayList<>();
        if (!ofFlight) {
            worth.count(wind).map(Doubted::words).ifPresent(asked::add);
        }
        String offered = offered(wind, ofFlight);
        if (!offered.isEmpty()) {
            asked.add(offered);
        }
        asked.addAll(worth.askedReadings(wind));
        return asked.isEmpty() ? List.of() : List.of(question(wind, String.join(". ", asked), false));
    }

    /** The flight asks about its own turns; of those at full stretch the wind alone knows. */
    private String offered(Wind wind, boolean ofFlight) {
        Map<Measured, Double> turns = CountedTurns.of(wind);
        String words = worth.offered(wind).stream()
                .filter(what -> !ofFlight || what == Measured.AT_FULL)
                .map(what -> what.words() + " " + PlainNumber.of(Objects.requireNonNull(turns.get(what))))
                .collect(Collectors.joining(", "));
        return words.isEmpty() ? "" : NotCounted.OFFERED.words() + ": " + words;
    }

    /** Of one motor without an attempt: what waits for a word, and what was left out. */
    List<WindQuestion> ofMotor(List<Wind> winds) {
        return winds.stream()
                .filter(wind -> wind.counted() != null)
                .flatMap(wind -> worth.leftOut(wind).isEmpty()
                        ? open(wind, Set.of()).stream()
                        : Stream.of(question(wind, worth.leftOut(wind), true)))
                .toList();
    }

    private WindQuestion question(Wind wind, String asked, boolean out) {
        WindCounted counted = wind.counted();
        String tag =
                MotorStore.find(tx, wind.begun().motorId()).map(MotorAdded::tag).orElse("");
        String when = WHEN.format(Instant.ofEpochMilli(wind.begun().atMs()).atZone(zone));
        String turns = counted == null ? "" : ", " + counted.stopCrankTurns() + " crank turns";
        return new WindQuestion(
                wind.begun().id(), "Wind of " + tag + ", " + when + turns, asked, JudgeWind.seen(wind, worth), out);
    }
}

package org.skeinday.bench.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.skeinday.bench.action.JudgeWind;
import org.skeinday.evidence.Doubted;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Doubt;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** Which winds wait for a word, and for which. */
public final class WindQuestions {
    /** Of winds for attempts so many are looked through, the last: each was asked about on its own page. */
    private static final int LAST = 40;

    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d.M. HH:mm");

    private final Tx tx;
    private final ZoneId zone;
    private final WindWorth worth;

    public WindQuestions(Tx tx, ZoneId zone) {
        this.tx = tx;
        this.zone = zone;
        this.worth = new WindWorth(tx);
    }

    /** The last first. @param flights that ask about their own turns */
    public List<WindQuestion> open(Set<String> flights) {
        List<WindQuestion> questions = new ArrayList<>(WindStore.countedToAsk(tx, LAST).stream()
                .filter(wind -> worth.leftOut(wind).isEmpty())
                .flatMap(wind -> open(wind, flights).stream())
                .toList());
        Collections.reverse(questions);
        return List.copyOf(questions);
    }

    private List<WindQuestion> open(Wind wind, Set<String> flights) {
        boolean ofFlight = wind.broke().isEmpty()
                && flights.contains(String.valueOf(wind.begun().attemptId()));
        List<String> asked = Stream.concat(
                        ofFlight ? Stream.of() : worth.count(wind).map(Doubted::words).stream(),
                        worth.openReadings(wind).stream().map(Doubt::words))
                .toList();
        return asked.isEmpty() ? List.of() : List.of(question(wind, String.join(". ", asked), false));
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

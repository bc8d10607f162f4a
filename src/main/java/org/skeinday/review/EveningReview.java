package org.skeinday.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.skeinday.attempt.RemainderReading;
import org.skeinday.units.UnitSystem;

/**
 * Everything that is asked of some flights at once.
 *
 * @param flights in any order
 * @param winds torque at one share of breaking turns; counted winds without metronome
 * @param holds that were read long enough
 * @param day whose motors are held against the earlier ones of their batch
 */
public record EveningReview(List<FlightRow> flights, List<TorqueAtShare> winds, List<HeldWind> holds, LocalDate day) {
    public EveningReview {
        flights = flights.stream()
                .sorted(Comparator.comparingLong((FlightRow r) -> r.flight().atMs())
                        .thenComparing(FlightRow::id))
                .toList();
        winds = List.copyOf(winds);
        holds = List.copyOf(holds);
    }

    /** The surest first; in the reader's units. */
    public List<Finding> findings(UnitSystem units) {
        List<FlightRow> evidence =
                flights.stream().flatMap(r -> r.evidence().stream()).toList();
        List<TestResult> asked = new ArrayList<>();
        for (TimeAgainst measured : TimeAgainst.values()) {
            asked.add(measured.ask(evidence, units));
        }
        asked.add(FirstUse.ask(evidence));
        asked.addAll(NextMotorAsked.ask(evidence, RemainderReading.MANY_FROM));
        asked.addAll(LostTime.ask(flights)); // a flight that does not count took its time all the same
        asked.addAll(TorqueRatios.stiffness(winds, day));
        asked.addAll(TorqueRatios.meters(winds));
        asked.addAll(Bleed.ask(holds));
        return Findings.of(asked);
    }
}

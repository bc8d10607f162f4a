package org.skeinday.attempt.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.UsualFlights;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.MeterScale;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.store.KnownBounds;

/** Holds what was told of flights against what the record knows of motors, meters and the other flights. */
public final class FlightDoubts {
    private final KnownBounds bounds;

    /** By attempt id, as far as somebody chose or tapped where it is wound. */
    private final Map<String, Optional<MeterScale>> ofPlaces;

    public FlightDoubts(Tx tx) {
        bounds = new KnownBounds(tx);
        ofPlaces = PlacesThen.scales(tx);
    }

    /** What is asked about one flight. @param ofModel the flights of its model, itself among them or not */
    public List<Doubted> of(Flight flight, List<Flight> ofModel) {
        return doubts(flight, UsualFlights.of(ofModel));
    }

    private List<Doubted> doubts(Flight flight, UsualFlights usual) {
        return flight.told(scale(flight), bounds.breakingTurns(flight.motorId()), usual.without(flight))
                .doubts();
    }

    /** Of the meter of its winding place as that was then; of any meter where nobody knows the place. */
    private @Nullable MeterScale scale(Flight flight) {
        return ofPlaces.getOrDefault(flight.id(), Optional.ofNullable(bounds.scale()))
                .orElse(null);
    }

    /** The same flights in the same order with their doubts. @param flights every one of each model */
    List<Flight> doubting(List<Flight> flights) {
        Map<String, UsualFlights> usual = new HashMap<>();
        flights.stream()
                .filter(f -> f.modelId() != null)
                .collect(Collectors.groupingBy(f -> String.valueOf(f.modelId())))
                .forEach((model, flown) -> usual.put(model, UsualFlights.of(flown)));
        UsualFlights unknown = UsualFlights.of(List.of()); // flights without a model are not of one model
        return flights.stream()
                .map(f -> doubting(f, usual.getOrDefault(String.valueOf(f.modelId()), unknown)))
                .toList();
    }

    private Flight doubting(Flight flight, UsualFlights usual) {
        List<Doubted> ofWatches = flight.said().doubted();
        return flight.with(flight.said()
                .doubting(Stream.concat(ofWatches.stream(), doubts(flight, usual).stream())
                        .filter(doubt -> !isAnswered(flight, doubt.about()))
                        .toList()));
    }

    /** Who said that it was so said it of all numbers that contradict it. */
    private static boolean isAnswered(Flight flight, Measured what) {
        return flight.said().marks().isConfirmed(what, flight.number(what));
    }
}

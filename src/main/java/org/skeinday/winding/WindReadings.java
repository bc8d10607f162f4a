package org.skeinday.winding;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Hold;
import org.skeinday.motor.Resolution;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Torque;

/** A wind's needle marks as torque: three curves that are never mixed. */
record WindReadings(List<TorqueReading> winding, List<TorqueReading> unwinding, List<Hold.Reading> hold) {
    static WindReadings of(Wind wind) {
        WindTimes times = wind.times();
        List<Crossing> crossings = wind.crossings();
        @Nullable Long stopped = times.stopped();
        @Nullable Long backedOff = times.backedOff();
        long stop = stopped == null ? Long.MAX_VALUE : stopped;
        long off = backedOff == null ? Long.MAX_VALUE : backedOff;
        return new WindReadings(
                turns(wind, crossings.stream().filter(c -> c.elapsedMs() <= stop)),
                turns(
                        wind,
                        crossings.stream()
                                .filter(c -> backedOff != null && c.elapsedMs() > stop && c.elapsedMs() <= off)),
                held(wind, crossings.stream().filter(c -> c.elapsedMs() > off), off));
    }

    private static List<TorqueReading> turns(Wind wind, Stream<Crossing> crossings) {
        Optional<TurnLine> line = wind.turns().line();
        return crossings
                .flatMap(c ->
                        line
                                .flatMap(l -> wind.torque(c.level()).map(t -> reading(wind, l.at(c.elapsedMs()), t)))
                                .stream())
                .toList();
    }

    private static TorqueReading reading(Wind wind, Count count, Torque torque) {
        return new TorqueReading(count.crankTurns() * wind.begun().ratio(), torque);
    }

    /** A mark that is crossed is read as finely as the eye tells tenths of a division. */
    private static List<Hold.Reading> held(Wind wind, Stream<Crossing> crossings, long from) {
        Resolution eye = wind.read();
        Stream<Hold.Reading> tapped = crossings.flatMap(c ->
                wind.torque(c.level()).stream().map(t -> new Hold.Reading((c.elapsedMs() - from) / 1000.0, t, eye)));
        return Stream.concat(tapped, typed(wind))
                .sorted(Comparator.comparingDouble(Hold.Reading::seconds))
                .toList();
    }

    /** The clock on the page runs from the last turn, the hold that is measured from the last one taken off. */
    private static Stream<Hold.Reading> typed(Wind wind) {
        WindTimes times = wind.times();
        Long stopped = times.stopped();
        Long backedOff = times.backedOff();
        double off = stopped == null || backedOff == null ? 0 : (backedOff - stopped) / 1000.0;
        return wind.held().stream()
                .filter(read -> read.seconds() > off)
                .map(read -> read.reading(read.seconds() - off));
    }
}

package org.skeinday.review;

import java.time.LocalDate;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.Part;
import org.skeinday.attempt.SizeAdvice;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/**
 * One flight, official or at practice, with everything that the evening may ask of it. Nothing is filled in: what was
 * not noted is null or empty, here and in each part.
 *
 * @param day in the zone of the hall
 * @param watchesMs what each watch that counts has read, in ms, in any order; empty where there was none
 * @param steps at most one for each part
 */
public record FlightRow(
        Flight flight,
        LocalDate day,
        FlightContext flown,
        Wound wound,
        Conditions conditions,
        List<Long> watchesMs,
        List<StepTime> steps) {
    public FlightRow {
        watchesMs = List.copyOf(watchesMs);
        steps = List.copyOf(steps);
        if (steps.stream().map(StepTime::part).distinct().count() < steps.size()) {
            throw new IllegalArgumentException("Each part must have one time only, but they were " + steps);
        }
    }

    /** A flight of which no more is known than what was counted. */
    public static FlightRow of(Flight flight, LocalDate day) {
        return new FlightRow(
                flight, day, FlightContext.UNKNOWN, Wound.UNKNOWN, Conditions.UNKNOWN, List.of(), List.of());
    }

    public String id() {
        return flight.id();
    }

    /** Whether it enters averages, fits and findings. */
    public boolean counts() {
        return flight.counts().isYes();
    }

    /** What may be learned from it; empty when it does not count. See {@link Flight#evidence}. */
    public Optional<FlightRow> evidence() {
        return flight.evidence()
                .map(counted ->
                        new FlightRow(counted, day, flown, wound.knowing(counted), conditions, watchesMs, steps));
    }

    /** Official, else of our own watch. */
    public @Nullable Double seconds() {
        Long ms = flight.timeMs();
        return ms == null ? null : (Double) (ms / 1000.0);
    }

    /** Largest less smallest reading, in seconds; null below two watches. */
    public @Nullable Double spreadSeconds() {
        if (watchesMs.size() < 2) {
            return null;
        }
        LongSummaryStatistics all = watchesMs.stream().mapToLong(ms -> ms).summaryStatistics();
        return (all.getMax() - all.getMin()) / 1000.0;
    }

    public Optional<StepTime> step(Part part) {
        return steps.stream().filter(s -> s.part() == part).findFirst();
    }

    /** What the advice on the next motor's size asks of a flight; empty where something of it is missing. */
    public Optional<SizeAdvice.Flown> forSize() {
        Double loop = wound.loopMm();
        Double mass = wound.massG();
        return loop == null || mass == null
                ? Optional.empty()
                : flight.figures()
                        .map(figures -> new SizeAdvice.Flown(Length.ofMillimetres(loop), Mass.ofGrams(mass), figures));
    }
}

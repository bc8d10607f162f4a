package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.skeinday.evidence.Counts;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.Sample;
import org.skeinday.motor.Section;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/**
 * What the turns left after the last valid flights suggest for the next motor of the same batch (common practice). It
 * assumes that the rotor will use about as many turns as it did, that motors are wound to the same share of their
 * breaking turns, and that those go with L0^1.5 / m^0.5, so that the batch's K does not matter. A thicker motor also
 * turns the rotor faster: so the advice goes one bounded step, to be flown before the next.
 *
 * @param loop for the mass asked about
 * @param reason in words: what was left, and the change of loop, mass and width; width at the same thickness and number
 *     of strands
 */
public record SizeAdvice(RemainderReading reading, Length loop, String reason) {
    /** So many last valid flights are looked at. */
    public static final int LAST = 3;

    /** Fewest turns that one step goes to, as a share of those flown (own bound). */
    private static final double SHORTEST_STEP = 0.85;

    /** More turns after none were left: how much too early the motor ran out is not known (own bound). */
    private static final double LONGER_STEP = 1.05;

    /**
     * A flight that counts, with the motor that flew it.
     *
     * @param loop and {@code mass} above zero
     */
    public record Flown(Length loop, Mass mass, FlightFigures figures) {
        /** Breaking turns for a K of 1: for comparison of sizes. */
        private double size() {
            return BreakingTurns.of(1, loop, mass);
        }
    }

    /**
     * Empty without a flight.
     *
     * @param flights in the order in which they were flown
     * @param manyFrom share of the turns from which the remainder counts as many
     * @param mass of the motor to be made, above zero
     */
    public static Optional<SizeAdvice> of(List<Flown> flights, double manyFrom, Mass mass) {
        if (flights.isEmpty()) {
            return Optional.empty();
        }
        List<Flown> last = flights.subList(Math.max(0, flights.size() - LAST), flights.size());
        List<RemainderReading> readings = last.stream()
                .map(f -> RemainderReading.of(f.figures(), Counts.yes(), manyFrom))
                .distinct()
                .toList();
        RemainderReading reading = readings.size() == 1 ? readings.get(0) : RemainderReading.SOME;
        double size = median(last, Flown::size) * step(reading, share(last), manyFrom);
        Length loop = Length.ofInches(Math.pow(size * Math.sqrt(mass.grams()), 2.0 / 3));
        String words = left(last)
                + (readings.size() == 1 ? reading.words() : "they disagree: fly this size again before changing it")
                + change(last.get(last.size() - 1), loop, mass);
        return Optional.of(new SizeAdvice(reading, loop, words));
    }

    /** Half of what counts as many is aimed at: some left, so that the motor does not run out. */
    private static double step(RemainderReading reading, double share, double manyFrom) {
        return switch (reading) {
            case MANY -> Math.max(SHORTEST_STEP, 1 - (share - manyFrom / 2));
            case NONE -> LONGER_STEP;
            case SOME, SAYS_NOTHING -> 1;
        };
    }

    private static double share(List<Flown> flights) {
        return median(flights, f -> f.figures().shareRemaining());
    }

    private static double median(List<Flown> flights, java.util.function.ToDoubleFunction<Flown> of) {
        return Sample.of(flights.stream().mapToDouble(of).toArray()).median();
    }

    private static String left(List<Flown> last) {
        String flights = last.size() == 1 ? "the last valid flight" : "the last " + last.size() + " valid flights";
        return String.format(Locale.ROOT, "%s left %.0f %% of the turns: ", flights, 100 * share(last));
    }

    private static String change(Flown flown, Length loop, Mass mass) {
        List<String> parts = new ArrayList<>();
        add(parts, "loop", "%+.0f mm", loop.millimetres() - flown.loop().millimetres(), 0.5);
        add(parts, "mass", "%+.2f g", mass.grams() - flown.mass().grams(), 0.005);
        double section = Section.of(mass, loop).squareMillimetres()
                / Section.of(flown.mass(), flown.loop()).squareMillimetres();
        add(parts, "strip width", "%+.0f %%", 100 * (section - 1), 0.5);
        return parts.isEmpty() ? "" : " (" + String.join(", ", parts) + ")";
    }

    private static void add(List<String> parts, String what, String format, double change, double least) {
        if (Math.abs(change) >= least) {
            parts.add(what + " " + String.format(Locale.ROOT, format, change));
        }
    }
}

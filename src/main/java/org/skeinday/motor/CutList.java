package org.skeinday.motor;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;

/** Strip to cut and weigh for wanted loops, and motors that go together. */
public final class CutList {
    /** Strip that goes into the knot and its ends: common practice, editable. */
    public static final Length DEFAULT_KNOT = Length.ofMillimetres(20);

    private CutList() {}

    /**
     * @param strip to cut for the loop
     * @param weighs what that strip should weigh, for the weigh list
     */
    public record Cut(Length loop, Length strip, Mass weighs) {}

    /** @param gramsPerMetre linear density of one strand, above zero */
    public static List<Cut> of(List<Length> loops, Length knot, double gramsPerMetre) {
        Preconditions.positive("Linear density in g/m", gramsPerMetre);
        return loops.stream().map(l -> cut(l, knot, gramsPerMetre)).toList();
    }

    private static Cut cut(Length loop, Length knot, double gramsPerMetre) {
        Length strip = Length.ofMillimetres(2 * loop.millimetres() + knot.millimetres());
        return new Cut(loop, strip, Mass.ofGrams(strip.metres() * gramsPerMetre));
    }

    /** A motor on the scales. */
    public record Weighed(String motorId, Mass mass) {}

    public record Pair(Weighed lighter, Weighed heavier) {
        public Mass difference() {
            return Mass.ofGrams(heavier.mass().grams() - lighter.mass().grams());
        }
    }

    /**
     * Pairs of closest mass: the sum of the differences is the least that pairing can reach. Of an odd number one
     * stays over: the one whose absence leaves that sum smallest.
     */
    public static List<Pair> pairs(List<Weighed> motors) {
        List<Weighed> sorted =
                motors.stream().sorted(Comparator.comparing(Weighed::mass)).toList();
        if (sorted.size() % 2 == 0) {
            return neighbours(sorted);
        }
        return IntStream.range(0, sorted.size())
                .mapToObj(i -> neighbours(without(sorted, i)))
                .min(Comparator.comparingDouble(CutList::differences))
                .orElse(List.of());
    }

    private static List<Pair> neighbours(List<Weighed> sorted) {
        return IntStream.range(0, sorted.size() / 2)
                .mapToObj(i -> new Pair(sorted.get(2 * i), sorted.get(2 * i + 1)))
                .toList();
    }

    private static List<Weighed> without(List<Weighed> all, int left) {
        return IntStream.range(0, all.size())
                .filter(i -> i != left)
                .mapToObj(all::get)
                .toList();
    }

    private static double differences(List<Pair> pairs) {
        return pairs.stream().mapToDouble(p -> p.difference().grams()).sum();
    }
}

package org.skeinday.review;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Guards against chance when several questions are asked at once: S. Holm, A simple sequentially rejective multiple test
 * procedure, Scand. J. Statist. 6 (1979), 65–70. With all answers of an adjusted chance up to a level believed, the
 * chance of believing any that is none stays at that level, however the questions hang together; ours share flights,
 * which is why the sharper method of Benjamini and Hochberg is not used.
 */
final class Holm {
    private Holm() {}

    /** @param chances 0 to 1 each. @return adjusted, in the same order */
    static double[] adjusted(double[] chances) {
        int[] order = IntStream.range(0, chances.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> chances[i]))
                .mapToInt(i -> i)
                .toArray();
        double[] adjusted = new double[chances.length];
        double least = 0;
        for (int i = 0; i < order.length; i++) {
            least = Math.max(least, Math.min(1, (order.length - i) * chances[order[i]]));
            adjusted[order[i]] = least;
        }
        return adjusted;
    }
}

package org.skeinday.motor;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.skeinday.units.Torque;

/** What some break tests of one batch come to, in words: two or three motors are wanted. */
public final class BreakTests {
    /** Common practice: one motor may have had a nick, the second says so. */
    public static final int FEWEST = 2;

    public static final int ENOUGH = 3;

    private BreakTests() {}

    /** @param broken motors with turns at the break, 0 or more */
    public static String toGo(int broken) {
        if (broken >= ENOUGH) {
            return "Enough: " + broken + " motors broke and were counted.";
        }
        if (broken == FEWEST) {
            return "Two motors broke and were counted: a third is welcome and not needed.";
        }
        return broken == 1 ? "One or two more motors are wanted." : "Two or three motors are wanted.";
    }

    /** The median of these K (inches and grams), or why it says little. */
    public static String k(double... ks) {
        if (ks.length == 0) {
            return "not known: no motor of this batch was counted to its break";
        }
        return String.format(Locale.ROOT, "%.1f", Sample.of(ks).median()) + from(ks.length);
    }

    /** How much a median rests on. */
    public static String from(int motors) {
        return motors < FEWEST ? ", from one motor: too few to rely on" : ", median of " + motors;
    }

    /** On one meter, each brought to the section of the first by A^1.5; empty without any. */
    public static Optional<Torque> medianTorque(List<BreakTest> tests) {
        if (tests.isEmpty()) {
            return Optional.empty();
        }
        Section section = tests.get(0).section();
        double[] torques = tests.stream()
                .mapToDouble(t -> section.scaled(t.torque(), t.section()).newtonMillimetres())
                .toArray();
        return Optional.of(Torque.ofNewtonMillimetres(Sample.of(torques).median()));
    }
}

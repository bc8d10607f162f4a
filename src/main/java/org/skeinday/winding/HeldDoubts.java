package org.skeinday.winding;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Unlikely;
import org.skeinday.units.Torque;

/** Which typed readings of a hold are asked about: off the scale of the wind's meter, or above the wind's highest torque. */
public final class HeldDoubts {
    /** 0.9 is 0.9 in every unit, but for a hair. */
    private static final double HAIR = 1 + 1e-9;

    private static final String HELD = " held ";

    private HeldDoubts() {}

    /** Of those that are new, in the order of time: what the form asks. @param before of which nobody is asked again */
    public static List<Doubted> asked(Wind wind, List<HeldRead> typed, List<HeldRead> before) {
        return typed.stream()
                .filter(read -> !before.contains(read))
                .flatMap(read -> doubted(wind, read).stream())
                .toList();
    }

    /** What stays asked about until somebody confirms it or leaves it out. */
    static List<Doubt> of(Wind wind) {
        List<Doubt> doubts = new ArrayList<>();
        for (HeldRead read : wind.held()) {
            doubted(wind, read)
                    .ifPresent(d -> doubts.add(new Doubt(id(wind.begun().id(), read), kind(d), d.words())));
        }
        return doubts;
    }

    private static Doubt.Kind kind(Doubted of) {
        return of.why() == Unlikely.HELD_ABOVE_PEAK ? Doubt.Kind.HELD_ABOVE_PEAK : Doubt.Kind.HELD;
    }

    /** Names one reading with its numbers: another number is asked about anew. @param wind its id */
    public static String id(String wind, HeldRead read) {
        return wind + HELD + Math.round(read.seconds() * 1e3) + " " + Math.round(read.torqueNmm() * 1e6);
    }

    /** The wind that a doubt of a hold is about; empty for a doubt of a mark. */
    public static Optional<String> windOf(String doubt) {
        int at = doubt.indexOf(HELD);
        return at < 0 ? Optional.empty() : Optional.of(doubt.substring(0, at));
    }

    /** The readings without that one. */
    public static List<HeldRead> without(Wind wind, String doubt) {
        return wind.held().stream()
                .filter(read -> !id(wind.begun().id(), read).equals(doubt))
                .toList();
    }

    private static Optional<Doubted> doubted(Wind wind, HeldRead read) {
        String said = "The hold was read as " + read.typed();
        @Nullable Double full = wind.begun().fullScaleNmm();
        if (full != null && read.torqueNmm() > full * HAIR) {
            return Optional.of(new Doubted(
                    Unlikely.HELD_OFF_THE_METER,
                    said + ", beyond the torque meter, whose scale ends at " + words(full)
                            + ": look at its unit and its point"));
        }
        return mostAtPeak(wind)
                .filter(most -> read.torqueNmm() > most * HAIR)
                .map(most -> new Doubted(
                        Unlikely.HELD_ABOVE_PEAK,
                        said + ", above the highest torque of its wind, which was below " + words(most)));
    }

    /** The needle stood below the next mark: nobody saw it cross that. Empty where the needle was not read. */
    private static Optional<Double> mostAtPeak(Wind wind) {
        return wind.peakLevel().isEmpty()
                ? Optional.empty()
                : wind.torque(wind.peakLevel().getAsInt() + 1).map(Torque::newtonMillimetres);
    }

    private static String words(double nmm) {
        return String.format(
                Locale.ROOT, "%.2f in·ozf", Torque.ofNewtonMillimetres(nmm).inchOunces());
    }
}

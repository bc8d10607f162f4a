package org.skeinday.winding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchBand;
import org.skeinday.units.Torque;

/**
 * Which needle marks are to be asked about once the wind is over. Of a run of doubtful marks the first is named: with it
 * left out, all after it are lower.
 */
public final class MarkDoubts {
    /** Own default: a tap back so soon takes the tap before it back. */
    public static final long CORRECTION_MS = 2_000;
    /** Own default: two marks within this time are one tap too many, or a needle that jumped. */
    public static final long AT_ONCE_MS = 150;
    /** Before the first step in, from the highest mark so far, in per cent (the trade's notes, common practice). */
    public static final int MOST_FALL_PERCENT = 5;
    /** Above the upper edge of the batch's band, in per cent (the trade's notes, common practice). */
    public static final int MOST_ABOVE_BAND_PERCENT = 25;

    private final Wind wind;
    private final List<Crossing> winding;
    private final List<Doubt> doubts = new ArrayList<>();

    private MarkDoubts(Wind wind) {
        this.wind = wind;
        @Nullable Long stop = wind.times().stopped();
        winding = wind.crossings().stream()
                .filter(c -> stop == null || c.elapsedMs() <= stop)
                .toList();
    }

    /**
     * In the order of the taps, then what was typed of the hold.
     *
     * @param band the batch's by motor turns, for this motor and meter; compared only where counts were entered
     */
    public static List<Doubt> of(Wind wind, Optional<DoubleFunction<Optional<BatchBand.Band>>> band) {
        MarkDoubts doubts = new MarkDoubts(wind);
        doubts.beyondMeter();
        doubts.fell();
        doubts.jumped();
        band.ifPresent(doubts::aboveBand);
        List<String> order = wind.marks().stream().map(WindMark::id).toList();
        doubts.doubts.sort(Comparator.comparingInt(d -> order.indexOf(d.markId())));
        doubts.doubts.addAll(HeldDoubts.of(wind));
        return List.copyOf(doubts.doubts);
    }

    /**
     * How many marks are still asked about, without those that need the batch's other winds: those would be held against winds
     * that are held against this one.
     *
     * @param confirmed ids of marks of which somebody said that they were so
     */
    public static int open(Wind wind, Set<String> confirmed) {
        return (int) of(wind, Optional.empty()).stream()
                .filter(doubt -> HeldDoubts.windOf(doubt.markId()).isEmpty() && !confirmed.contains(doubt.markId()))
                .count();
    }

    /** Every one: none of these marks is on the meter. */
    private void beyondMeter() {
        @Nullable Double division = wind.begun().divisionNmm();
        @Nullable Double fullScale = wind.begun().fullScaleNmm();
        if (division == null || fullScale == null) {
            return;
        }
        double marks = fullScale / division * (1 + Wind.BINARY_HAIR);
        wind.crossings().stream()
                .filter(c -> c.rose() && c.level() > marks)
                .forEach(c -> add(
                        c,
                        Doubt.Kind.BEYOND_METER,
                        "Mark " + c.level() + " lies beyond the meter, which ends at mark " + (int) Math.floor(marks)));
    }

    private void fell() {
        @Nullable Long in = wind.times().steppedIn();
        int highest = 0;
        for (Crossing c : winding) {
            if (in != null && c.elapsedMs() > in) {
                return;
            }
            if (c.isSet()) { // somebody read the meter: what was counted before it was wrong
                highest = c.level();
                continue;
            }
            if (fallen(highest, c.level()) && !fallen(highest, c.before())) {
                add(c, Doubt.Kind.FELL, fallWords(highest, c.level()));
            }
            highest = Math.max(highest, c.level());
        }
    }

    private static boolean fallen(int highest, int level) {
        return (highest - level) * 100 > MOST_FALL_PERCENT * highest;
    }

    private static String fallWords(int highest, int level) {
        return "Down from mark " + highest + " to mark " + level + ", "
                + Math.round(100.0 * (highest - level) / highest) + " %, with no step in";
    }

    private void jumped() {
        for (int i = 1; i < winding.size(); i++) {
            Crossing before = winding.get(i - 1);
            Crossing c = winding.get(i);
            long apart = c.elapsedMs() - before.elapsedMs();
            if (before.rose() && c.rose() && !c.isSet() && apart <= AT_ONCE_MS) {
                add(
                        c,
                        Doubt.Kind.JUMPED,
                        "Up from mark " + before.before() + " to mark " + c.level() + " within " + apart + " ms");
            }
        }
    }

    private void aboveBand(DoubleFunction<Optional<BatchBand.Band>> band) {
        boolean was = false;
        for (Crossing c : winding) {
            Optional<Doubt> doubt = against(band, c);
            if (!was) {
                doubt.ifPresent(doubts::add);
            }
            was = doubt.isPresent();
        }
    }

    private Optional<Doubt> against(DoubleFunction<Optional<BatchBand.Band>> band, Crossing c) {
        Optional<Torque> torque = wind.torque(c.level());
        Optional<Double> turns = wind.turns()
                .at(c.elapsedMs())
                .filter(count -> !count.estimated())
                .map(count -> count.crankTurns() * wind.begun().ratio());
        return turns.flatMap(band::apply).flatMap(b -> torque.flatMap(t -> above(c, t, b.high(), turns.orElse(0.0))));
    }

    private static Optional<Doubt> above(Crossing c, Torque torque, Torque high, double turns) {
        double percent = 100 * (torque.newtonMillimetres() / high.newtonMillimetres() - 1);
        if (!(percent > MOST_ABOVE_BAND_PERCENT + Wind.BINARY_HAIR)) {
            return Optional.empty();
        }
        String much = high.newtonMillimetres() == 0 ? "" : Math.round(percent) + " % ";
        return Optional.of(new Doubt(
                c.mark().id(),
                Doubt.Kind.ABOVE_BAND,
                "Mark " + c.level() + " is " + much + "above the batch's band at " + Math.round(turns)
                        + " motor turns"));
    }

    private void add(Crossing c, Doubt.Kind kind, String words) {
        doubts.add(new Doubt(c.mark().id(), kind, words));
    }
}

package org.skeinday.contest;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.skeinday.units.PlainNumber;

/** What is still to be done at a winding place before the first crank turn, in words. */
public final class StationCheck {
    /** Held when no motor of today says how much is needed: twice what 4 mm² pull at four times (common practice). */
    public static final double USUAL_PULL_N = 10;

    /** A scale further off than this is checked again (common practice). */
    public static final double MOST_SCALE_ERROR = 0.01;

    private StationCheck() {}

    /**
     * Empty when all is done.
     *
     * @param pullN what the mount must hold for today's motors, newtons; empty for the usual
     */
    public static List<String> open(StationAdded station, OptionalDouble pullN) {
        List<String> open = new ArrayList<>();
        mount(station, pullN.orElse(USUAL_PULL_N), open);
        winder(station, open);
        meter(station, open);
        scale(station, open);
        return open;
    }

    private static void mount(StationAdded station, double leastN, List<String> open) {
        if (station.mount().equals("held")) {
            open.add("Held by a person: not advised. A clamped table or a weighted post cannot tire or slip.");
        }
        if (station.pullTestN() == null || station.pullTested() == null) {
            open.add("Pull-test the mount: it must hold " + PlainNumber.of(leastN) + " N and more.");
        } else if (station.pullTestN() < leastN) {
            open.add("The mount was pulled with " + PlainNumber.of(station.pullTestN()) + " N only; test it with "
                    + PlainNumber.of(leastN) + " N.");
        }
    }

    private static void winder(StationAdded station, List<String> open) {
        if (station.winderRatio() == null || station.ratioChecked() == null) {
            open.add("Check the winder's ratio: mark the hook, turn the crank once, count.");
        }
        if (station.output().isEmpty()) {
            open.add("Watch the hook over one marked turn of the crank: does it turn with or against it?");
        }
    }

    private static void meter(StationAdded station, List<String> open) {
        if (station.meter() == null) {
            return;
        }
        if (station.span() == null || station.calibrated() == null) {
            open.add("Check the meter at three known torques, up and down, and note its zero.");
            return;
        }
        double worst = Span.parse(station.span()).worst();
        if (Math.abs(worst) > Span.MOST_ERROR) {
            open.add("The meter is off by " + percent(worst) + " at one of its points: calibrate it again.");
        }
    }

    private static void scale(StationAdded station, List<String> open) {
        if (station.knownMassG() == null || station.scaleReadsG() == null) {
            return;
        }
        double error = station.scaleReadsG() / station.knownMassG() - 1;
        if (Math.abs(error) > MOST_SCALE_ERROR) {
            open.add("The scale is off by " + percent(error) + ": masses near the limit cannot be trusted.");
        }
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%+.1f %%", share * 100);
    }
}

package org.skeinday.contest;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is still to be done at a winding place before the first crank turn, in words. */
public final class StationCheck {
    /**
     * A motor of 4 mm² pulls about 5 N at four times its length, more at five (common practice): the mount has to hold
     * twice that.
     */
    public static final double LEAST_PULL_N = 10;

    /** A scale further off than this is checked again (common practice). */
    public static final double MOST_SCALE_ERROR = 0.01;

    private StationCheck() {}

    /** Empty when all is done. */
    public static List<String> open(StationAdded station) {
        List<String> open = new ArrayList<>();
        mount(station, open);
        winder(station, open);
        meter(station, open);
        scale(station, open);
        return open;
    }

    private static void mount(StationAdded station, List<String> open) {
        if (station.mount().equals("held")) {
            open.add("Held by a person: not advised. A clamped table or a weighted post cannot tire or slip.");
        }
        if (station.pullTestN() == null || station.pullTested() == null) {
            open.add("Pull-test the mount: it must hold " + plain(LEAST_PULL_N) + " N and more.");
        } else if (station.pullTestN() < LEAST_PULL_N) {
            open.add("The mount was pulled with " + plain(station.pullTestN()) + " N only; test it with "
                    + plain(LEAST_PULL_N) + " N.");
        }
    }

    private static void winder(StationAdded station, List<String> open) {
        if (station.winderRatio() == null || station.ratioChecked() == null) {
            open.add("Check the winder's ratio: mark the hook, turn the crank once, count.");
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

    private static String plain(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}

package org.skeinday.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchBand;
import org.skeinday.motor.Hold;
import org.skeinday.motor.HoldBleed;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/** Pictures of what the meter showed: winds of a batch with their band, and holds with the fitted bleed. */
public final class WindPictures {
    private static final int STEPS = 40;

    private WindPictures() {}

    /** A wind as it was read. @param name for example the motor's tag and its use */
    public record Read(String id, String name, List<TorqueReading> readings) {}

    /** A hold as it was read, in the order of time. */
    public record HoldRead(String id, String name, List<Hold.Reading> readings) {}

    /**
     * Torque over motor turns.
     *
     * @param band of the batch for a motor of this size, by motor turns (as {@code BatchWinds.winding} gives it); null
     *     before three winds
     */
    public static Picture winds(
            String batch, List<Read> winds, @Nullable DoubleFunction<Optional<BatchBand.Band>> band, UnitSystem units) {
        List<Picture.Series> series = winds.stream()
                .map(w -> new Picture.Series(
                        w.name(),
                        w.readings().stream()
                                .map(r ->
                                        new Picture.Point(r.motorTurns(), units.torqueNumber(r.torque()), w.id(), true))
                                .toList(),
                        true))
                .toList();
        String title = winds.isEmpty()
                ? "Winds of batch " + batch + ": none was read yet"
                : band == null
                        ? "Winds of batch " + batch + ": no band before three winds on one meter"
                        : "Winds of batch " + batch + ", with the band that holds 80 % of them";
        return new Picture(
                title,
                new Axis("motor turns", ""),
                new Axis("torque", units.torqueUnit()),
                series,
                band == null ? null : edges(winds, band, units),
                null,
                List.of("wind", "motor turns", "torque"),
                rows(series));
    }

    private static Picture.Band edges(
            List<Read> winds, DoubleFunction<Optional<BatchBand.Band>> band, UnitSystem units) {
        double most = winds.stream()
                .flatMap(w -> w.readings().stream())
                .mapToDouble(TorqueReading::motorTurns)
                .max()
                .orElse(0);
        List<Double> x = new ArrayList<>();
        List<Double> low = new ArrayList<>();
        List<Double> high = new ArrayList<>();
        IntStream.rangeClosed(1, STEPS).mapToDouble(i -> most * i / STEPS).forEach(turns -> {
            if (turns > 0) {
                band.apply(turns).ifPresent(b -> {
                    x.add(turns);
                    low.add(units.torqueNumber(b.low()));
                    high.add(units.torqueNumber(b.high()));
                });
            }
        });
        return new Picture.Band("8 of 10 winds", x, low, high);
    }

    /**
     * Torque over the logarithm of time, so that the bleed is a straight line.
     *
     * @param bleed of the batch; the fit is drawn from the first hold's torque at 10 s when it is known
     */
    public static Picture holds(String batch, List<HoldRead> holds, HoldBleed bleed, UnitSystem units) {
        List<Picture.Series> series = holds.stream()
                .map(h -> new Picture.Series(
                        h.name(),
                        h.readings().stream()
                                .map(r -> new Picture.Point(
                                        Math.log10(r.seconds()),
                                        units.torqueNumber(r.torque()),
                                        h.id(),
                                        r.seconds() > Hold.SETTLING_SECONDS))
                                .toList(),
                        true))
                .toList();
        String title = bleed.isKnown()
                ? String.format(
                        Locale.ROOT,
                        "Torque of batch %s falls by %.1f %% for each tenfold time of holding (%d holds)",
                        batch,
                        100 * bleed.k(),
                        bleed.holds().size())
                : "Torque of batch " + batch + " while held: bleed not known before " + HoldBleed.FEWEST_HOLDS
                        + " holds";
        return new Picture(
                title,
                new Axis("seconds since the last turn, as a power of ten", ""),
                new Axis("torque", units.torqueUnit()),
                series,
                null,
                bleed.isKnown() ? fit(bleed, units) : null,
                List.of("hold", "log10 of seconds", "torque"),
                rows(series));
    }

    /** T1 · (1 − k · log10 t) from 6 s to 10 min, with the median T1 of the holds. */
    private static Picture.Fit fit(HoldBleed bleed, UnitSystem units) {
        double[] first = bleed.holds().stream()
                .mapToDouble(h -> h.torqueAtOneSecond().newtonMillimetres())
                .sorted()
                .toArray();
        double middle = (first[(first.length - 1) / 2] + first[first.length / 2]) / 2;
        return new Picture.Fit(
                "median bleed",
                DoubleStream.of(6, 600)
                        .map(Math::log10)
                        .mapToObj(log -> new Picture.Point(
                                log,
                                units.torqueNumber(
                                        Torque.ofNewtonMillimetres(Math.max(0, middle * (1 - bleed.k() * log)))),
                                "",
                                true))
                        .toList());
    }

    private static List<List<String>> rows(List<Picture.Series> series) {
        List<List<String>> rows = new ArrayList<>();
        for (Picture.Series s : series) {
            for (Picture.Point p : s.points()) {
                rows.add(List.of(s.name(), Findings.number(p.x(), p.x() < 10 ? 2 : 0), Findings.number(p.y(), 2)));
            }
        }
        return rows;
    }
}

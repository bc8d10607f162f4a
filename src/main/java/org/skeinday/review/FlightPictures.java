package org.skeinday.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.StraightLine;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/**
 * Pictures with a point for each flight of which both figures are known: one series for each model. Flights and
 * numbers that do not count are points that do not.
 *
 * @param flights in the order in which they were flown
 * @param findings of the same flights: each picture has the finding it belongs to as its title
 */
public record FlightPictures(List<FlightRow> flights, List<Finding> findings, UnitSystem units) {
    private record Measure(Axis axis, Figure figure, Function<FlightRow, @Nullable Double> of) {}

    private static final Measure TIME = new Measure(new Axis("time", "s"), Figure.TIME, FlightRow::seconds);

    public Picture timeByUse() {
        var use = new Measure(
                Axis.ofCount("use of the motor"),
                Figure.USE,
                r -> number(r.wound().use()));
        return picture(Finding.Kind.FIRST_USE, "Flight time by use of the motor", use, TIME, false);
    }

    /** With the line through the valid flights where all are of one model. */
    public Picture timeAgainstLaunchTorque() {
        var torque = new Measure(
                new Axis("launch torque", units.torqueUnit()),
                Figure.LAUNCH_TORQUE,
                r -> torque(r.flight().launchTorqueNmm()));
        return picture(Finding.Kind.LAUNCH_TORQUE, "Flight time against launch torque", torque, TIME, true);
    }

    public Picture meanSpeed() {
        var speed = new Measure(
                new Axis("mean speed, hook against frame", "turns/s"),
                Figure.SPEED,
                r -> r.flight().figures().map(f -> f.turnsPerSecond()).orElse(null));
        return inOrder(null, "Mean speed of each flight", speed);
    }

    public Picture shareRemaining() {
        var share = new Measure(
                new Axis("turns remaining of those at launch", "%"),
                Figure.SHARE_REMAINING,
                r -> r.flight().figures().map(f -> 100 * f.shareRemaining()).orElse(null));
        return inOrder(Finding.Kind.NEXT_MOTOR, "Turns remaining after each flight", share);
    }

    public Picture watchesSpread() {
        var spread = new Measure(new Axis("watches apart", "s"), Figure.SPREAD, FlightRow::spreadSeconds);
        return inOrder(null, "How far the watches lay apart on each flight", spread);
    }

    private Picture inOrder(Finding.@Nullable Kind kind, String plain, Measure y) {
        Map<String, Integer> places = new HashMap<>();
        flights.forEach(r -> places.put(r.id(), places.size() + 1));
        var order = new Measure(Axis.ofCount("flight"), Figure.DAY, r -> number(places.get(r.id())));
        return picture(kind, plain, order, y, false);
    }

    private Picture picture(Finding.@Nullable Kind kind, String plain, Measure x, Measure y, boolean fitted) {
        List<FlightRow> both = flights.stream()
                .filter(r -> x.of.apply(r) != null && y.of.apply(r) != null)
                .toList();
        Map<String, List<Picture.Point>> byModel = new LinkedHashMap<>();
        for (FlightRow row : both) {
            Named model = row.flown().model();
            byModel.computeIfAbsent(model == null ? "model not known" : model.name(), k -> new ArrayList<>())
                    .add(new Picture.Point(must(x, row), must(y, row), row.id(), counted(x, y, row)));
        }
        List<Picture.Series> series = new ArrayList<>();
        byModel.forEach((name, points) -> series.add(new Picture.Series(name, points, false)));
        return new Picture(
                title(kind, plain, both.isEmpty()),
                x.axis,
                y.axis,
                series,
                null,
                fitted && series.size() == 1 ? fit(series.get(0).points()) : null,
                head(x, y),
                both.stream().map(r -> cells(r, x, y)).toList());
    }

    /** Whether both numbers are evidence. */
    private static boolean counted(Measure x, Measure y, FlightRow row) {
        return row.evidence()
                .filter(r -> x.of.apply(r) != null && y.of.apply(r) != null)
                .isPresent();
    }

    private static double must(Measure measure, FlightRow row) {
        Double value = measure.of.apply(row);
        return value == null ? 0 : value;
    }

    /** The finding when there is one; of several of a kind the first, which is the surest. */
    private String title(Finding.@Nullable Kind kind, String plain, boolean empty) {
        return empty
                ? plain + ": nothing was noted yet"
                : findings.stream()
                        .filter(f -> f.kind() == kind)
                        .findFirst()
                        .map(f -> f.isEvidence() ? f.sentence() : plain + ". " + f.sentence())
                        .orElse(plain);
    }

    private static Picture.@Nullable Fit fit(List<Picture.Point> points) {
        List<Picture.Point> counted =
                points.stream().filter(Picture.Point::counted).toList();
        double[] x = counted.stream().mapToDouble(Picture.Point::x).toArray();
        if (x.length < TimeAgainst.FEWEST_FLIGHTS
                || DoubleStream.of(x).distinct().count() < 2) {
            return null;
        }
        StraightLine line = StraightLine.through(
                x, counted.stream().mapToDouble(Picture.Point::y).toArray());
        return new Picture.Fit(
                "fitted line",
                DoubleStream.of(
                                DoubleStream.of(x).min().getAsDouble(),
                                DoubleStream.of(x).max().getAsDouble())
                        .mapToObj(at -> new Picture.Point(at, line.at(at), "", true))
                        .toList());
    }

    private static List<String> head(Measure x, Measure y) {
        return List.of(
                Figure.DAY.words(),
                Figure.MODEL.words(),
                Figure.MOTOR.words(),
                x.axis.words(),
                y.axis.words(),
                Figure.VALID.words());
    }

    private List<String> cells(FlightRow row, Measure x, Measure y) {
        String atX = x.figure == Figure.DAY
                ? String.valueOf((int) must(x, row))
                : x.figure.of(row, units).orElse("");
        return List.of(
                Figure.DAY.of(row, units).orElse(""),
                Figure.MODEL.of(row, units).orElse(""),
                Figure.MOTOR.of(row, units).orElse(""),
                atX,
                y.figure.of(row, units).orElse(""),
                Figure.VALID.of(row, units).orElse(""));
    }

    private static @Nullable Double number(@Nullable Integer value) {
        return value == null ? null : (Double) value.doubleValue();
    }

    private @Nullable Double torque(@Nullable Double nmm) {
        return nmm == null ? null : (Double) units.torqueNumber(Torque.ofNewtonMillimetres(nmm));
    }
}

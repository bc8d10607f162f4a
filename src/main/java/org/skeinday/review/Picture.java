package org.skeinday.review;

import java.util.List;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * A picture as values: what the screen draws, what the print draws in black, and the table behind both.
 *
 * @param title what it shows, as a finding where there is one
 * @param band between two edges, null for none
 * @param fit drawn through, null for none
 * @param head of the table
 * @param rows of the table, each as long as its head
 */
public record Picture(
        String title,
        Axis x,
        Axis y,
        List<Series> series,
        @Nullable Band band,
        @Nullable Fit fit,
        List<String> head,
        List<List<String>> rows) {
    /**
     * A point.
     *
     * @param id of the flight behind it, empty for none
     * @param counted whether it enters the finding; one that does not is drawn hollow
     */
    public record Point(double x, double y, String id, boolean counted) {
        public Point {
            Preconditions.finite("x", x);
            Preconditions.finite("y", y);
        }
    }

    /** @param joined whether a line goes from point to point */
    public record Series(String name, List<Point> points, boolean joined) {
        public Series {
            points = List.copyOf(points);
        }
    }

    /** @param low and {@code high}: as many as x, each low no higher than its high */
    public record Band(String name, List<Double> x, List<Double> low, List<Double> high) {
        public Band {
            if (x.size() != low.size() || x.size() != high.size()) {
                throw new IllegalArgumentException("A band's edges must be as long as its x, but were " + x.size()
                        + ", " + low.size() + ", " + high.size());
            }
        }
    }

    /** Points of a line that was fitted, joined in order. */
    public record Fit(String name, List<Point> points) {}

    public Picture {
        Preconditions.filled("The title of a picture", title);
        series = List.copyOf(series);
        rows = List.copyOf(rows);
        int width = head.size();
        if (rows.stream().anyMatch(row -> row.size() != width)) {
            throw new IllegalArgumentException("Each row of a picture's table must have " + width + " cells");
        }
    }

    /** Without any point there is nothing to draw; the title says so. */
    public boolean isEmpty() {
        return series.stream().allMatch(s -> s.points().isEmpty());
    }

    DoubleStream allX() {
        return DoubleStream.concat(points().mapToDouble(Point::x), edges(band == null ? List.of() : List.of(band.x())));
    }

    DoubleStream allY() {
        return DoubleStream.concat(
                points().mapToDouble(Point::y), edges(band == null ? List.of() : List.of(band.low(), band.high())));
    }

    private static DoubleStream edges(List<List<Double>> edges) {
        return edges.stream().flatMap(List::stream).mapToDouble(v -> v);
    }

    private java.util.stream.Stream<Point> points() {
        var fitted = fit == null ? List.<Point>of() : fit.points();
        return java.util.stream.Stream.concat(series.stream().flatMap(s -> s.points().stream()), fitted.stream());
    }
}

package org.skeinday.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** One picture being laid out. */
final class ChartDrawing {
    private static final double GAP = 6;
    private static final double MARK = 4;
    private static final double LEGEND_LINE = 16;
    private static final String INK = "black";
    private static final String GREY = "#dddddd";
    private static final String[] DASHES = {"", "6 3", "2 3", "8 3 2 3"};

    private final Picture picture;
    private final int width;
    private final int height;
    private final List<Chart.Line> lines = new ArrayList<>();
    private final List<Chart.Path> paths = new ArrayList<>();
    private final List<Chart.Mark> marks = new ArrayList<>();
    private final List<Chart.Text> texts = new ArrayList<>();

    ChartDrawing(Picture picture, int width, int height) {
        this.picture = picture;
        this.width = width;
        this.height = height;
    }

    Chart chart() {
        draw(field());
        return new Chart(
                width,
                height,
                picture.title(),
                List.copyOf(lines),
                List.copyOf(paths),
                List.copyOf(marks),
                List.copyOf(texts));
    }

    /** Where values lie. */
    private record Field(Ticks x, Ticks y, double left, double right, double top, double bottom) {
        double atX(double value) {
            return left + (value - x.first()) / (x.last() - x.first()) * (right - left);
        }

        double atY(double value) {
            return bottom - (value - y.first()) / (y.last() - y.first()) * (bottom - top);
        }
    }

    /** Margins as wide as their labels need; steps as many as labels find room for. */
    private Field field() {
        double top = Chart.FONT + legendRows() * LEGEND_LINE;
        double bottom = height - 3 * Chart.FONT - GAP;
        Ticks y =
                ticks(picture.y(), picture.allY().toArray(), Math.max(2, (int) ((bottom - top) / (2.5 * Chart.FONT))));
        double left = Chart.FONT + 2 * GAP + longest(y) * Chart.LETTER + GAP;
        for (int most = 10; ; most--) {
            Ticks x = ticks(picture.x(), picture.allX().toArray(), most);
            double right = width - longest(x) * Chart.LETTER / 2 - GAP;
            double apart = (right - left) / (x.values().size() - 1);
            if (apart >= longest(x) * Chart.LETTER + GAP || most == 2) {
                return new Field(x, y, left, right, top, bottom);
            }
        }
    }

    private static Ticks ticks(Axis axis, double[] values, int most) {
        double low = java.util.Arrays.stream(values).min().orElse(0);
        double high = java.util.Arrays.stream(values).max().orElse(1);
        return axis.whole() ? Ticks.ofWhole(low, high, most) : Ticks.over(low, high, most);
    }

    private static int longest(Ticks ticks) {
        return ticks.labels().stream().mapToInt(String::length).max().orElse(1);
    }

    private int legendRows() {
        return legend().stream().mapToInt(e -> e.row() + 1).max().orElse(0);
    }

    private record Entry(int row, double x, String words) {}

    /** Names of all series, then band and fit, from left to right and onto the next row where one finds no room. */
    private List<Entry> legend() {
        List<String> names = new ArrayList<>();
        picture.series().forEach(s -> names.add(s.name()));
        if (picture.band() != null) {
            names.add(picture.band().name());
        }
        if (picture.fit() != null) {
            names.add(picture.fit().name());
        }
        List<Entry> entries = new ArrayList<>();
        double x = GAP;
        int row = 0;
        for (String name : names) {
            double wide = 24 + name.length() * Chart.LETTER + 2 * GAP;
            if (x > GAP && x + wide > width) {
                row++;
                x = GAP;
            }
            entries.add(new Entry(row, x, name));
            x += wide;
        }
        return entries;
    }

    private void draw(Field field) {
        axes(field);
        if (picture.band() != null) {
            band(picture.band(), field);
        }
        for (int i = 0; i < picture.series().size(); i++) {
            series(picture.series().get(i), i, field);
        }
        if (picture.fit() != null) {
            paths.add(new Chart.Path(polyline(picture.fit().points(), field), "none", INK, "", 2));
        }
        writeLegend();
    }

    private void axes(Field f) {
        lines.add(new Chart.Line(round(f.left), round(f.bottom), round(f.right), round(f.bottom)));
        lines.add(new Chart.Line(round(f.left), round(f.top), round(f.left), round(f.bottom)));
        for (int i = 0; i < f.x.values().size(); i++) {
            double x = round(f.atX(f.x.values().get(i)));
            lines.add(new Chart.Line(x, round(f.bottom), x, round(f.bottom + 4)));
            texts.add(new Chart.Text(
                    x,
                    round(f.bottom + 4 + Chart.FONT),
                    "middle",
                    false,
                    f.x.labels().get(i)));
        }
        for (int i = 0; i < f.y.values().size(); i++) {
            double y = round(f.atY(f.y.values().get(i)));
            lines.add(new Chart.Line(round(f.left - 4), y, round(f.left), y));
            texts.add(new Chart.Text(
                    round(f.left - GAP),
                    round(y + Chart.FONT / 3),
                    "end",
                    false,
                    f.y.labels().get(i)));
        }
        texts.add(new Chart.Text(
                round((f.left + f.right) / 2),
                height - GAP,
                "middle",
                false,
                picture.x().title()));
        texts.add(new Chart.Text(
                Chart.FONT,
                round((f.top + f.bottom) / 2),
                "middle",
                true,
                picture.y().title()));
    }

    private void band(Picture.Band band, Field field) {
        var d = new StringBuilder();
        int n = band.x().size();
        for (int i = 0; i < n; i++) {
            d.append(i == 0 ? "M" : "L")
                    .append(place(field, band.x().get(i), band.low().get(i)));
        }
        for (int i = n - 1; i >= 0; i--) {
            d.append("L").append(place(field, band.x().get(i), band.high().get(i)));
        }
        if (n > 0) {
            paths.add(new Chart.Path(d + "Z", GREY, "none", "", 0));
        }
    }

    private void series(Picture.Series series, int index, Field field) {
        if (series.joined() && series.points().size() > 1) {
            paths.add(new Chart.Path(polyline(series.points(), field), "none", INK, DASHES[index % DASHES.length], 1));
        }
        for (Picture.Point p : series.points()) {
            marks.add(new Chart.Mark(
                    shape(index, field.atX(p.x()), field.atY(p.y())),
                    p.counted() ? "black" : "white",
                    p.id(),
                    series.name() + ": " + Findings.number(p.x(), 2) + ", " + Findings.number(p.y(), 2)));
        }
    }

    private static String polyline(List<Picture.Point> points, Field field) {
        var d = new StringBuilder();
        for (Picture.Point p : points) {
            d.append(d.length() == 0 ? "M" : "L").append(place(field, p.x(), p.y()));
        }
        return d.toString();
    }

    private static String place(Field field, double x, double y) {
        return number(field.atX(x)) + " " + number(field.atY(y));
    }

    /** Square, triangle, diamond, and an upturned triangle: told apart without colour. */
    private static String shape(int index, double x, double y) {
        double m = MARK;
        double[][] corners = switch (index % 4) {
            case 0 -> new double[][] {{-m, -m}, {m, -m}, {m, m}, {-m, m}};
            case 1 -> new double[][] {{0, -m}, {m, m}, {-m, m}};
            case 2 -> new double[][] {{0, -m - 1}, {m + 1, 0}, {0, m + 1}, {-m - 1, 0}};
            default -> new double[][] {{-m, -m}, {m, -m}, {0, m}};
        };
        var d = new StringBuilder();
        for (double[] c : corners) {
            d.append(d.length() == 0 ? "M" : "L").append(number(x + c[0]) + " " + number(y + c[1]));
        }
        return d + "Z";
    }

    private void writeLegend() {
        List<Entry> entries = legend();
        for (int i = 0; i < entries.size(); i++) {
            Entry e = entries.get(i);
            double y = Chart.FONT + e.row * LEGEND_LINE;
            if (i < picture.series().size()) {
                marks.add(new Chart.Mark(shape(i, e.x + 10, y - 4), "black", "", e.words));
            } else {
                boolean isBand = picture.band() != null && i == picture.series().size();
                String d = "M" + number(e.x) + " " + number(y - 4) + "L" + number(e.x + 20) + " " + number(y - 4);
                paths.add(new Chart.Path(d, "none", isBand ? GREY : INK, "", isBand ? 8 : 2));
            }
            texts.add(new Chart.Text(round(e.x + 24), round(y), "start", false, e.words));
        }
    }

    /** Tenths are finer than any ink. */
    private static double round(double value) {
        return Math.round(value * 10) / 10.0;
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}

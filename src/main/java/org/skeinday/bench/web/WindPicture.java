package org.skeinday.bench.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchBand;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Count;
import org.skeinday.winding.Crossing;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;

/**
 * Torque against motor turns, as points of a drawing 640 wide and 360 high. While turns cannot be told yet, against the
 * seconds since the first crank turn; while a mark's worth is not known, in marks.
 */
final class WindPicture {
    private static final double LEFT = 64;
    private static final double RIGHT = 624;
    private static final double TOP = 16;
    private static final double BOTTOM = 312;
    private static final int BAND_STEPS = 40;

    private final Wind wind;
    private final UnitSystem units;
    private final boolean byTurns;
    private final boolean byTorque;
    private final double mostX;
    private final double mostY;
    private final List<BandPoint> band;
    private final @Nullable Torque wanted;

    /**
     * @param band the batch's, by motor turns
     * @param wanted at launch, null when nobody said
     */
    WindPicture(
            Wind wind,
            Optional<DoubleFunction<Optional<BatchBand.Band>>> band,
            @Nullable Torque wanted,
            UnitSystem units) {
        this.wind = wind;
        this.units = units;
        this.byTorque = wind.begun().divisionNmm() != null;
        this.wanted = byTorque ? wanted : null;
        this.byTurns = wind.turns().at(0).isPresent();
        this.band = byTurns && byTorque ? band.map(this::points).orElse(List.of()) : List.of();
        this.mostX = Math.max(byTurns ? plannedTurns() : 10, most(this::x));
        this.mostY = Math.max(highestLine(), most(c -> y(c.level()))) * 1.05;
    }

    private double plannedTurns() {
        Integer target = wind.begun().targetCrankTurns();
        return target == null ? 100 : target * wind.begun().ratio();
    }

    private double most(ToDoubleFunction<Crossing> of) {
        return wind.crossings().stream().mapToDouble(of).max().orElse(0);
    }

    private double highestLine() {
        double ceiling = Optional.ofNullable(wind.begun().ceilingNmm())
                .filter(c -> byTorque)
                .map(c -> units.torqueNumber(Torque.ofNewtonMillimetres(c)))
                .orElse(0.0);
        double launch = wanted == null ? 0 : units.torqueNumber(wanted);
        double high = Math.max(
                Math.max(ceiling, launch),
                band.stream()
                        .mapToDouble(b -> units.torqueNumber(b.band().high()))
                        .max()
                        .orElse(0));
        return high > 0 || !wind.crossings().isEmpty() ? high : byTorque ? y(10) : 10;
    }

    private double y(int level) {
        return byTorque ? wind.torque(level).map(units::torqueNumber).orElse(0.0) : level;
    }

    private double x(Crossing c) {
        return byTurns
                ? wind.turns().at(c.elapsedMs()).map(Count::crankTurns).orElse(0.0)
                        * wind.begun().ratio()
                : c.elapsedMs() / 1000.0;
    }

    private record BandPoint(double turns, BatchBand.Band band) {}

    private List<BandPoint> points(DoubleFunction<Optional<BatchBand.Band>> at) {
        List<BandPoint> points = new ArrayList<>();
        for (int i = 0; i <= BAND_STEPS; i++) {
            double turns = plannedTurns() * 1.1 * i / BAND_STEPS;
            at.apply(turns).ifPresent(b -> points.add(new BandPoint(turns, b)));
        }
        return points;
    }

    WindPictureView view(String said) {
        @Nullable
        Long stop = wind.phases().stream()
                .filter(p -> p.phase().equals(WindPhase.STOPPED))
                .map(WindPhase::elapsedMs)
                .reduce((a, b) -> b)
                .orElse(null);
        List<Crossing> up = wind.crossings().stream()
                .filter(c -> stop == null || c.elapsedMs() <= stop)
                .toList();
        List<Crossing> down = wind.crossings().stream()
                .filter(c -> stop != null && c.elapsedMs() > stop)
                .toList();
        Double ceiling = wind.begun().ceilingNmm();
        return new WindPictureView(
                bandShape(),
                line(up),
                line(down),
                wind.crossings().stream().map(this::dot).toList(),
                ceiling == null || !byTorque ? null : level(Torque.ofNewtonMillimetres(ceiling)),
                wanted == null ? null : level(wanted),
                ticks(mostX, v -> across(v)),
                ticks(mostY, v -> high(v)),
                byTurns ? "motor turns" + (wind.counted() == null ? ", as estimated" : "") : "seconds",
                byTorque ? units.torqueUnit() : "marks",
                said);
    }

    private String bandShape() {
        List<String> shape = new ArrayList<>();
        band.forEach(p -> shape.add(point(p.turns(), units.torqueNumber(p.band().low()))));
        for (int i = band.size() - 1; i >= 0; i--) {
            shape.add(point(
                    band.get(i).turns(), units.torqueNumber(band.get(i).band().high())));
        }
        return String.join(" ", shape);
    }

    private String line(List<Crossing> crossings) {
        return crossings.stream().map(c -> point(x(c), y(c.level()))).collect(Collectors.joining(" "));
    }

    private WindPictureView.Dot dot(Crossing c) {
        return new WindPictureView.Dot(text(across(x(c))), text(high(y(c.level()))));
    }

    private WindPictureView.Level level(Torque torque) {
        return new WindPictureView.Level(text(high(units.torqueNumber(torque))), units.torque(torque));
    }

    /** At most six, at 1, 2 or 5 times a power of ten. */
    private static List<WindPictureView.Tick> ticks(double most, DoubleFunction<Double> place) {
        if (!(most > 0 && most < Double.MAX_VALUE)) { // steps of nothing would never end
            throw new IllegalArgumentException("A scale must end above zero, but ended at " + most);
        }
        double step = Math.pow(10, Math.floor(Math.log10(most / 2)));
        for (double nice : new double[] {1, 2, 5, 10}) {
            if (most / (step * nice) <= 6) {
                step *= nice;
                break;
            }
        }
        List<WindPictureView.Tick> ticks = new ArrayList<>();
        for (int i = 0; i * step <= most; i++) {
            ticks.add(new WindPictureView.Tick(text(place.apply(i * step)), number(i * step)));
        }
        return ticks;
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private String point(double x, double y) {
        return text(across(x)) + "," + text(high(y));
    }

    private double across(double x) {
        return LEFT + (RIGHT - LEFT) * x / mostX;
    }

    private double high(double y) {
        return BOTTOM - (BOTTOM - TOP) * y / mostY;
    }

    private static String text(double place) {
        return String.format(Locale.ROOT, "%.1f", place);
    }
}

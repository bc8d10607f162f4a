package org.skeinday.hall;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code air.measured}: temperature and humidity of a hall at one moment; at least one of them.
 *
 * @param celsius −20 to 60 °C
 * @param humidity relative, 0 to 100 %
 * @param atMs epoch ms, by the server's clock
 */
public record AirMeasured(
        String id,
        String hall,
        @Nullable Double celsius,
        @Nullable Double humidity,
        long atMs,
        @Nullable String personId) {
    /** A hall colder by more than this than where the motors were tested: stiffer rubber, breaks earlier. */
    public static final double COLDER_C = 5;

    /** What was measured at most so long before or after a moment says how it was then: 2 h (own default). */
    public static final long NEAR_MS = 2 * 3_600_000L;

    public AirMeasured {
        Preconditions.filled("The hall's name", hall, HallDescribed.LONGEST_HALL);
        if (celsius == null && humidity == null) {
            throw new IllegalArgumentException("A temperature or a humidity must be given, but neither was");
        }
        if (celsius != null) {
            Preconditions.within("The temperature in °C", celsius, -20, 60);
        }
        if (humidity != null) {
            Preconditions.within("The humidity in %", humidity, 0, 100);
        }
    }

    /** The one measured closest to a moment, at most {@link #NEAR_MS} away; the earlier of two as close. */
    public static Optional<AirMeasured> near(List<AirMeasured> measured, long atMs) {
        return measured.stream().filter(a -> Math.abs(a.atMs - atMs) <= NEAR_MS).min((a, b) -> {
            int closer = Long.compare(Math.abs(a.atMs - atMs), Math.abs(b.atMs - atMs));
            return closer == 0 ? Long.compare(a.atMs, b.atMs) : closer;
        });
    }

    /** The last temperature and the last humidity near a moment are two measurements: each is looked for by itself. */
    public static @Nullable Double celsiusNear(List<AirMeasured> measured, long atMs) {
        return near(measured.stream().filter(a -> a.celsius != null).toList(), atMs)
                .map(AirMeasured::celsius)
                .orElse(null);
    }

    /** As {@link #celsiusNear}, in %. */
    public static @Nullable Double humidityNear(List<AirMeasured> measured, long atMs) {
        return near(measured.stream().filter(a -> a.humidity != null).toList(), atMs)
                .map(AirMeasured::humidity)
                .orElse(null);
    }

    /** Of those measured near the given moments; empty when none was. */
    public static OptionalDouble meanCelsius(List<AirMeasured> measured, List<Long> moments) {
        return moments.stream()
                .map(ms -> celsiusNear(measured, ms))
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .average();
    }

    /**
     * What to say when the hall is more than 5 °C colder than the motors' break tests (common practice); empty when it is
     * not, or nobody measured.
     */
    public Optional<String> coldWords(OptionalDouble testedAtC) {
        if (celsius == null || testedAtC.isEmpty() || !(testedAtC.getAsDouble() - celsius > COLDER_C)) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "%.0f °C colder than where the motors were tested: rubber is stiffer and breaks earlier. Keep motors warm.",
                testedAtC.getAsDouble() - celsius));
    }
}

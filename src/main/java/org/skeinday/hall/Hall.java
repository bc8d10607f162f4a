package org.skeinday.hall;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/**
 * A hall as it was found. What nobody measured is null; words are as typed.
 *
 * @param ceiling 1 to 150 m
 * @param lowest the lowest thing under the ceiling that a model can touch
 * @param drift where the air goes, in words, for example from the door to the stage
 * @param driftMps 0 to 5 m/s
 * @param fansAndDoors which ones run or stand open
 * @param temperatureC -20 to 60 °C
 * @param humidityPercent 0 to 100
 * @param launchSpot where models are released
 */
public record Hall(
        String name,
        @Nullable Length ceiling,
        @Nullable Obstruction lowest,
        @Nullable String drift,
        @Nullable Double driftMps,
        @Nullable String fansAndDoors,
        @Nullable Double temperatureC,
        @Nullable Double humidityPercent,
        @Nullable String launchSpot,
        @Nullable Floor floor) {
    /** A hall colder by more than this than where the motors were tested: stiffer rubber, breaks earlier. */
    public static final double COLDER_C = 5;

    /** @param height of its lower edge over the floor */
    public record Obstruction(String name, Length height) {
        public Obstruction {
            Limit.filled("The obstruction's name", name);
            Limit.within("The obstruction's height in mm", height.millimetres(), 500, 150_000);
        }
    }

    /** The floor as a rectangle, each side 3 to 300 m. */
    public record Floor(Length length, Length width) {
        public Floor {
            Limit.within("The floor's length in mm", length.millimetres(), 3000, 300_000);
            Limit.within("The floor's width in mm", width.millimetres(), 3000, 300_000);
        }
    }

    public Hall {
        Limit.filled("The hall's name", name);
        if (ceiling != null) {
            Limit.within("The ceiling in mm", ceiling.millimetres(), 1000, 150_000);
        }
        if (ceiling != null && lowest != null && lowest.height().compareTo(ceiling) > 0) {
            throw new IllegalArgumentException("The lowest obstruction must not be above the ceiling of "
                    + Limit.plain(ceiling.millimetres()) + " mm, but was at "
                    + Limit.plain(lowest.height().millimetres()) + " mm");
        }
        if (driftMps != null) {
            Limit.within("The drift in m/s", driftMps, 0, 5);
        }
        if (temperatureC != null) {
            Limit.within("The temperature in °C", temperatureC, -20, 60);
        }
        if (humidityPercent != null) {
            Limit.within("The humidity in percent", humidityPercent, 0, 100);
        }
    }

    /** How high a model may climb before it meets something: the lowest obstruction, else the ceiling. */
    public Optional<Length> clearHeight() {
        return Optional.ofNullable(lowest == null ? ceiling : lowest.height());
    }

    /**
     * What to say when the hall is more than 5 °C colder than the motors' tests (common practice); empty when it is not,
     * or nobody measured.
     */
    public Optional<String> coldWords(@Nullable Double testedAtC) {
        if (temperatureC == null || testedAtC == null || !(testedAtC - temperatureC > COLDER_C)) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "%.0f °C colder than where the motors were tested: rubber is stiffer and breaks earlier. Keep motors warm.",
                testedAtC - temperatureC));
    }
}

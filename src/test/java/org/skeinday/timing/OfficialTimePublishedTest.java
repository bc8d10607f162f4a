package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.skeinday.units.FlightTime;

class OfficialTimePublishedTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/published/timing/official.csv", numLinesToSkip = 1)
    void watches_come_to_the_time_that_the_rules_say(
            String take,
            @Nullable String ifTwo,
            String rounding,
            String step,
            boolean first,
            String watches,
            String official,
            String source) {
        var rule = new TimeRule(
                Take.valueOf(take.toUpperCase(Locale.ROOT)),
                ifTwo == null ? null : Take.valueOf(ifTwo.toUpperCase(Locale.ROOT)),
                Rounding.valueOf(rounding.toUpperCase(Locale.ROOT)),
                FlightTime.parse(step).millis(),
                first);
        List<FlightTime> times =
                Arrays.stream(watches.split(" ")).map(FlightTime::parse).toList();
        assertEquals(
                FlightTime.parse(official).millis(),
                OfficialTime.reduce(times, rule).millis(),
                source);
    }
}

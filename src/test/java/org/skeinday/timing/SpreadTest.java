package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadTest {
    private static final TimeRule MIDDLE = new TimeRule(Take.MIDDLE, Take.LONGER, Rounding.DOWN, 10, false);

    /** Reliability, "Times are honest": readings that differ by more than 0.3 s are put before a person. */
    @ParameterizedTest
    @CsvSource({
        "10.000 10.300,",
        "10.000 10.301, Watch A: 0:10.00 and watch B: 0:10.301",
        "10.3 10.0 10.3,",
        "10.301 10.0 10.301, Watch B: 0:10.00 is 0.301 s below the middle",
        "10.0 10.1 10.5, Watch C: 0:10.50 is 0.40 s above the middle",
        "10.0 10.2 10.4, Watch A: 0:10.00 and watch C: 0:10.40 are 0.40 s apart",
        "10.0 10.3 10.31, Watch A: 0:10.00 and watch C: 0:10.31 are 0.31 s apart",
        "10.0 11.0 12.0, Watch A: 0:10.00 is 1.00 s below and watch C: 0:12.00 is 1.00 s above the middle",
        "10.0,",
    })
    void watches_more_than_the_limit_apart_are_put_before_a_person_by_name(String times, @Nullable String starts) {
        Watches all = WatchesTest.watches(times);
        TimeDecision decision = all.decide(WatchesRule.of(MIDDLE, all.readings().size()));
        if (starts == null) {
            assertInstanceOf(TimeDecision.Taken.class, decision);
        } else {
            String reason = assertInstanceOf(TimeDecision.ForAPerson.class, decision)
                    .reasons()
                    .get(0);
            assertTrue(reason.startsWith(starts), reason);
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 10.000 10.000, true", "0, 10.000 10.001, false", "500, 10.0 10.5, true", "500, 10.0 10.501, false"})
    void the_spread_limit_is_a_setting(long limit, String times, boolean taken) {
        var rule = new WatchesRule(MIDDLE, 2, limit, WatchesRule.IfOne.PERSON);
        assertEquals(taken, WatchesTest.watches(times).decide(rule) instanceof TimeDecision.Taken);
    }
}

package org.skeinday.review;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code season.begun}: a new season, beside the facts of the crew that came with it.
 *
 * @param firstDay ISO date
 * @param agedBatches ids of batches that are to be broken again before their K and ceiling are used
 * @param atMs when it was decided, ms since 1970 UTC
 */
public record SeasonBegun(
        String firstDay,
        List<String> agedBatches,
        long atMs,
        @Nullable String personId) {
    public SeasonBegun {
        LocalDate.parse(firstDay); // refuses what is no day
        agedBatches = List.copyOf(agedBatches);
    }
}

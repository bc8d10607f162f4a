package org.skeinday.attempt;

import java.util.List;

/**
 * Everything that is known of one attempt's watches.
 *
 * @param readings as they came in, without landings that were taken back
 * @param judged what the captain decided, as it came
 */
public record Timed(List<ReadingTaken> readings, List<WatchJudged> judged, Marks marks) {}

package org.skeinday.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * All watches of one flight: those that count, those that failed, and those that a person left out.
 *
 * @param readings one for each watch, in the order of the timekeepers' places
 */
public record Watches(List<WatchReading> readings) {
    public Watches {
        readings = List.copyOf(readings);
        if (readings.stream().map(WatchReading::watch).distinct().count() != readings.size()) {
            throw new IllegalArgumentException("Each watch must be named once, but they are "
                    + readings.stream().map(WatchReading::watch).collect(Collectors.joining(", ")));
        }
    }

    public List<WatchReading.Counted> counted() {
        return readings.stream()
                .filter(WatchReading.Counted.class::isInstance)
                .map(WatchReading.Counted.class::cast)
                .toList();
    }

    /**
     * The time by the rule, whatever the spread, with a word on each watch that does not count.
     *
     * @throws IllegalArgumentException when no watch counts, or the rule has nothing to say of so many
     */
    public OfficialTime reduce(TimeRule rule) {
        OfficialTime time = OfficialTime.reduce(
                counted().stream().map(WatchReading.Counted::time).toList(), rule);
        return new OfficialTime(time.millis(), time.how() + notes() + aside("; "));
    }

    private String notes() {
        return counted().stream()
                .filter(w -> !w.note().isEmpty())
                .map(w -> "; watch " + w.watch() + ": " + w.note())
                .collect(Collectors.joining());
    }

    private String aside(String before) {
        String words = readings.stream()
                .filter(r -> !(r instanceof WatchReading.Counted))
                .map(WatchReading::words)
                .collect(Collectors.joining("; "));
        return words.isEmpty() ? "" : before + words;
    }

    /** The time, when nothing speaks against it; else what a person must look at. */
    public TimeDecision decide(WatchesRule rule) {
        List<String> reasons = new ArrayList<>();
        int count = counted().size();
        if (readings.size() < rule.wanted()) {
            reasons.add("Of " + rule.wanted() + " watches " + readings.size() + (readings.size() == 1 ? " is" : " are")
                    + " heard of. Wait for the others, or say that they failed.");
        }
        if (count == 1
                && rule.wanted() > 1
                && readings.size() >= rule.wanted()
                && rule.ifOne() == WatchesRule.IfOne.PERSON) {
            reasons.add("One watch is left: " + counted().get(0).words() + aside("; ") + ". Say whether it counts.");
        }
        Spread.doubt(counted(), rule.spreadMs()).ifPresent(reasons::add);
        Optional<OfficialTime> proposed = Optional.empty();
        try {
            proposed = Optional.of(reduce(rule.time()));
        } catch (IllegalArgumentException e) {
            reasons.add(e.getMessage() + aside(". "));
        }
        return reasons.isEmpty()
                ? new TimeDecision.Taken(proposed.orElseThrow())
                : new TimeDecision.ForAPerson(proposed, reasons);
    }
}

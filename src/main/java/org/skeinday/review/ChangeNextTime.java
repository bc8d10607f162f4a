package org.skeinday.review;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code event.change-next-time}: what the team wants to do differently, written after an event and shown where the
 * next one is prepared. A later one of the same event takes its place.
 *
 * @param lines up to three, none blank, each 200 characters at most; none takes them back
 */
public record ChangeNextTime(String eventId, List<String> lines) {
    public static final int MOST_LINES = 3;
    public static final int LONGEST = 200;

    public ChangeNextTime {
        Preconditions.filled("The event", eventId);
        lines = List.copyOf(lines);
        if (lines.size() > MOST_LINES) {
            throw new IllegalArgumentException("What to change must have at most 3 lines, but had " + lines.size());
        }
        for (String line : lines) {
            Preconditions.filled("A line of what to change", line);
            Preconditions.atMost("A line of what to change", line, LONGEST);
        }
    }

    /** As a form sends them: blank lines are left out, space around them is taken off. */
    public static ChangeNextTime typed(String eventId, List<String> typed) {
        return new ChangeNextTime(
                eventId,
                typed.stream()
                        .map(String::strip)
                        .filter(line -> !line.isEmpty())
                        .toList());
    }

    /**
     * What was written after an event of this day.
     *
     * @param day ISO date
     */
    public record Dated(String day, String event, ChangeNextTime change) {}

    /** For an event on this day: what was written after the last one before it that says anything. */
    public static Optional<Dated> before(String day, List<Dated> all) {
        return all.stream()
                .filter(d -> d.day().compareTo(day) < 0 && !d.change().lines().isEmpty())
                .max(Comparator.comparing(Dated::day).thenComparing(Dated::event));
    }
}

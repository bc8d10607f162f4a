package org.skeinday.attempt.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.units.FlightTime;

/** Values as the pages say them. */
final class Words {
    private Words() {}

    static String clock(long ms, ZoneId zone) {
        return DateTimeFormatter.ofPattern("HH:mm")
                .format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    static String window(Today today, EntryAdded entry, ZoneId zone) {
        return today.window(entry)
                .map(w -> clock(w.opensAtMs(), zone) + " – " + clock(w.closesAtMs(), zone))
                .orElse("any time");
    }

    /** What stands in an attempt's cell of the result sheet. */
    static String cell(AttemptNow attempt, EventAdded event) {
        return switch (attempt.state()) {
            case PLANNED -> "–";
            case CALLED, WINDING, HOLDING, LANDED -> attempt.state().word();
            case RELEASED -> "in the air";
            case CLOSED -> attempt.officialMs() == null ? "closed" : time(attempt.officialMs(), event);
            case SCRUBBED, VOID -> attempt.state().word();
        };
    }

    static String time(long ms, EventAdded event) {
        return new FlightTime(ms).text(decimals(event));
    }

    static int decimals(EventAdded event) {
        long step = event.roundToMs();
        return step % 1000 == 0 ? 0 : step % 100 == 0 ? 1 : step % 10 == 0 ? 2 : 3;
    }

    static String times(Today today, EntryAdded entry) {
        String words = today.of(entry).stream()
                .filter(a -> a.state() != State.SCRUBBED)
                .map(a -> cell(a, today.event()))
                .collect(Collectors.joining(", "));
        return words.isEmpty() ? "none yet" : words;
    }

    static String score(EventAdded event) {
        return switch (event.score()) {
            case "best" -> "Best";
            case "mean" -> "Mean of best " + event.bestOf();
            default -> "Sum of best " + event.bestOf();
        };
    }

    static String rules(EventAdded event) {
        return event.attempts() + " attempts in a window of " + event.windowMinutes() + " min; "
                + score(event).toLowerCase(java.util.Locale.ROOT) + "; " + event.timekeepers() + " timekeepers, "
                + event.take() + " time, rounded " + event.rounding();
    }
}

package org.skeinday.attempt.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.WindowAdded;
import org.skeinday.timing.TimeRule;
import org.skeinday.units.FlightTime;

/** Values as the pages say them. */
public final class Words {
    private Words() {}

    /** Hours and minutes. */
    public static String clock(long ms, ZoneId zone) {
        return DateTimeFormatter.ofPattern("HH:mm")
                .format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    static String window(Today today, EntryAdded entry, ZoneId zone) {
        return today.window(entry)
                .map(w -> clock(w.opensAtMs(), zone) + " – " + clock(w.closesAtMs(), zone))
                .orElse("any time");
    }

    /** A release, done or still to come, at a moment outside the window; empty when it is inside. */
    static Optional<String> outside(WindowAdded window, @Nullable Long atMs) {
        if (atMs == null || (atMs >= window.opensAtMs() && atMs < window.closesAtMs())) {
            return Optional.empty();
        }
        boolean early = atMs < window.opensAtMs();
        long s = (early ? window.opensAtMs() - atMs : atMs - window.closesAtMs()) / 1000;
        return Optional.of(far(s) + (early ? "before the window opens" : "after the window closed")
                + ": whether the attempt counts is for the rules to say.");
    }

    private static String far(long s) {
        if (s < 3600) {
            return s / 60 + " min " + s % 60 + " s ";
        }
        return s < 48 * 3600 ? s / 3600 + " h " + s / 60 % 60 + " min " : s / 86_400 + " days ";
    }

    /** Where the terms allow devices, as a sentence; empty when anywhere. */
    static String devices(Terms terms) {
        return switch (terms.devices()) {
            case "stands" -> ". Devices at the winding places only.";
            case "none" -> ". No devices at the table: work from the printed card there.";
            default -> "";
        };
    }

    static String ordinal(int n) {
        boolean teen = n % 100 >= 11 && n % 100 <= 13;
        return n + (teen ? "th" : n % 10 == 1 ? "st" : n % 10 == 2 ? "nd" : n % 10 == 3 ? "rd" : "th");
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
        return TimeRule.decimals(event.roundToMs());
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

    /** Of the watches that there are: two have no middle. */
    private static String taken(EventAdded event) {
        boolean two = event.take().equals("middle") && event.timekeepers() == 2;
        return two ? event.ifTwo() : event.timekeepers() == 1 ? "its" : event.take();
    }

    static String rules(EventAdded event) {
        return event.attempts() + (event.attempts() == 1 ? " attempt" : " attempts")
                + (event.windowMinutes() == 0 ? "" : " in a window of " + event.windowMinutes() + " min") + "; "
                + score(event).toLowerCase(java.util.Locale.ROOT) + "; " + event.timekeepers()
                + (event.timekeepers() == 1 ? " timekeeper, " : " timekeepers, ")
                + taken(event) + " time, rounded " + event.rounding()
                + (event.rounding().equals("nearest") ? " " : " to ")
                + new FlightTime(event.roundToMs()).seconds(decimals(event)) + " s";
    }
}

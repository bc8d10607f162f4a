package org.skeinday.attempt.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.OneNumber;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.Terms;
import org.skeinday.contest.WindowAdded;
import org.skeinday.motor.BreakPlace;
import org.skeinday.standing.FlightTally;
import org.skeinday.timing.Take;
import org.skeinday.timing.TimeRule;
import org.skeinday.units.FlightTime;

/** Values as the pages say them. */
public final class PageWords {
    private PageWords() {}

    /** Hours and minutes. */
    public static String clock(long ms, ZoneId zone) {
        return DateTimeFormatter.ofPattern("HH:mm")
                .format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    /** With seconds. */
    public static String second(long ms, ZoneId zone) {
        return DateTimeFormatter.ofPattern("HH:mm:ss")
                .format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    /** What a timekeeper pressed. */
    static String mark(WatchMarked mark) {
        String at = mark.ms() == null ? "" : " at " + new FlightTime(Math.abs(mark.msOrZero())).text(2);
        return switch (WatchMark.of(mark.what()).orElseThrow()) {
            case READY -> "ready";
            case RELEASED -> "released" + bound(mark);
            case NOT_RELEASED -> "not released after all";
            case TOUCHED -> "touched" + at;
            case HELD -> "caught" + at;
            case FREE -> "free again" + at;
            case TAKEN_BACK -> "the contact before was a mistake";
            case STILL_FLYING -> "stopped by mistake, still flying" + at;
            case SWALLOWED -> "a second press" + at + ", left out";
            case GAP ->
                "the device's clocks came apart by " + new FlightTime(Math.abs(mark.msOrZero())).seconds(1) + " s";
            case RELOADED -> "the page was loaded anew";
            case LATE_RELEASE -> "pressed for a release that had been before: no release";
            case APART ->
                "the laptop's moments of release and landing lie "
                        + new FlightTime(Math.abs(mark.msOrZero()) / 100 * 100).seconds(1) + " s "
                        + (mark.msOrZero() < 0 ? "less" : "more")
                        + " apart than it says";
        };
    }

    private static String bound(WatchMarked mark) {
        Long bound = mark.boundMs();
        return bound == null ? ", by when it came in" : ", give or take " + new FlightTime(bound).seconds(3) + " s";
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
        return switch (terms.devicesRule()) {
            case STANDS -> ". Devices at the winding places only.";
            case NONE -> ". No devices at the table: work from the printed card there.";
            case FREE -> "";
        };
    }

    /** What stands in an attempt's cell of the result sheet: its official time, else its phase. */
    static String cell(LiveAttempt attempt, EventAdded event) {
        return switch (attempt.phase().name()) {
            case NEXT -> "–";
            case OFFICIAL -> time(((AttemptPhase.Official) attempt.phase()).officialMs(), event);
            default -> PhaseWords.of(attempt);
        };
    }

    /** In brackets what is no official flight. */
    static String cell(LiveAttempt attempt, EventAdded event, FlightTally tally) {
        boolean official = tally.verdicts().stream()
                .filter(v -> v.id().equals(attempt.id()))
                .allMatch(v -> v.standing() == FlightTally.Standing.OFFICIAL);
        String words = cell(attempt, event);
        return official || attempt.phase().name() != AttemptPhase.Name.OFFICIAL ? words : "(" + words + ")";
    }

    /** The same, with what it is where it is no official flight. */
    private static String cellWithNote(LiveAttempt attempt, EventAdded event, FlightTally tally, boolean again) {
        var standing = tally.verdicts().stream()
                .filter(v -> v.id().equals(attempt.id()))
                .map(FlightTally.Verdict::standing)
                .findFirst();
        String note = ResultWords.note(attempt, standing, again);
        return cell(attempt, event) + (note.isEmpty() ? "" : " " + note);
    }

    /** Beside the one number of a page. */
    public static String says(OneNumber number) {
        return switch (number.says()) {
            case NOTHING -> "";
            case WINDOW_OPENS -> "the window opens in";
            case LATEST_START -> "start winding at the latest in";
            case WINDOW_CLOSES -> "the window closes in";
            case LAST_CALL -> "Last call: the window closes in";
            case WINDOW_CLOSED -> "the window is closed since";
            case CHOICE_ENDS -> "keep the time or fly again: time left";
            case WINDING -> "winding for";
            case HELD -> "held";
            case IN_THE_AIR -> "in the air";
            case OFFICIAL -> "official time";
        };
    }

    /** Where a motor parted, as a key. */
    public static String place(BreakPlace place) {
        return switch (place) {
            case STRAND -> "In the strand";
            case KNOT -> "At the knot";
            case RING -> "At a ring";
            case HOOK -> "At a hook";
            case UNKNOWN -> "It cannot be told";
            case DROPPED -> "It was dropped";
        };
    }

    static String time(long ms, EventAdded event) {
        return new FlightTime(ms).text(decimals(event));
    }

    static int decimals(EventAdded event) {
        return TimeRule.decimals(event.roundToMs());
    }

    /** What is behind an entry; where the attempt that is open stands is said beside it. */
    static String times(Today today, EntryAdded entry) {
        FlightTally tally = today.tally(entry);
        String words = today.of(entry).stream()
                .filter(a -> isFlownOrVoid(today.live(a.id()).phase().name()))
                .map(a -> cellWithNote(today.live(a.id()), today.event(), tally, a.flownAgain()))
                .collect(Collectors.joining(", "));
        return words.isEmpty() ? "none yet" : words;
    }

    private static boolean isFlownOrVoid(AttemptPhase.Name name) {
        return name == AttemptPhase.Name.OFFICIAL || name == AttemptPhase.Name.VOID;
    }

    /** With best and worst dropped where the flight rules ask for it. */
    static String score(Today today) {
        FlightRules rules = today.rules();
        if (today.scoring().trimmed().isEmpty()) {
            return score(today.event());
        }
        String best = rules.dropBest() == 0 ? "" : "the best" + (rules.dropBest() == 1 ? "" : " " + rules.dropBest());
        String worst =
                rules.dropWorst() == 0 ? "" : "the worst" + (rules.dropWorst() == 1 ? "" : " " + rules.dropWorst());
        return "Mean without " + best + (best.isEmpty() || worst.isEmpty() ? "" : " and ") + worst;
    }

    /** The same with what means are ordered by, which decides between entries whose shown means are equal. */
    static String scoreInFull(Today today) {
        return score(today)
                + (today.scoring().isMean()
                        ? switch (today.scoring().ranks()) {
                            case EXACT -> ", ordered exactly and shown to 0.01 s";
                            case ROUNDED -> ", ordered as rounded to 0.01 s";
                        }
                        : "");
    }

    /** What the flight rules add to the event's, as a sentence; empty when nothing. */
    static String flightRules(Today today) {
        FlightRules rules = today.rules();
        List<String> parts = new ArrayList<>();
        if (today.event().minimumMs() > 0) {
            parts.add("at least " + new FlightTime(today.event().minimumMs()).text(0) + ", "
                    + (rules.repeatsPerFlight() == 0
                            ? "no repeat"
                            : rules.repeatsPerFlight() + (rules.repeatsPerFlight() == 1 ? " repeat" : " repeats")));
        }
        rules.hold().ifPresent(hold -> parts.add("caught: " + rules.caughtWords()));
        if (rules.letsChoose()) {
            parts.add("collision: keep or fly again within " + new FlightTime(rules.collisionMs()).seconds(0) + " s");
        }
        return parts.isEmpty() ? "" : ". Flights: " + String.join("; ", parts) + ".";
    }

    static String score(EventAdded event) {
        return event.scoreKind().words(event.bestOf());
    }

    /** Of the watches that there are: two have no middle. */
    private static String taken(EventAdded event) {
        boolean two = event.takeRule() == Take.MIDDLE && event.timekeepers() == 2;
        return two ? event.ifTwo() : event.timekeepers() == 1 ? "its" : event.take();
    }

    /** How many attempts there are, how they are timed and what is their score, as a sentence. */
    public static String rules(EventAdded event) {
        return event.attempts() + (event.attempts() == 1 ? " attempt" : " attempts")
                + (event.windowMinutes() == 0 ? "" : " in a window of " + event.windowMinutes() + " min") + "; "
                + score(event).toLowerCase(java.util.Locale.ROOT) + "; " + event.timekeepers()
                + (event.timekeepers() == 1 ? " timekeeper, " : " timekeepers, ")
                + taken(event) + " time, rounded " + event.roundingRule().words() + " "
                + new FlightTime(event.roundToMs()).seconds(decimals(event)) + " s";
    }
}

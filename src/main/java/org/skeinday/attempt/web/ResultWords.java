package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.TimeAxis;
import org.skeinday.contest.EntryAdded;
import org.skeinday.standing.FlightTally;
import org.skeinday.units.FlightTime;

/** The words of a result: on the sheet, on the wall, in what can be taken along. One notation for all. */
final class ResultWords {
    private ResultWords() {}

    static List<ResultView.Row> rows(ResultSheet sheet) {
        TimeAxis axis = axis(sheet);
        return sheet.lines().stream().map(line -> row(sheet, line, axis)).toList();
    }

    private static ResultView.Row row(ResultSheet sheet, ResultSheet.Line line, TimeAxis axis) {
        return new ResultView.Row(
                line.place() == 0 ? "" : String.valueOf(line.place()),
                line.entry().name(),
                line.entry().team(),
                official(line)
                        .map(t -> new ResultView.Dot(
                                percent(axis.share(t.officialMs().orElseThrow())), t.isProvisional()))
                        .toList(),
                line.attempts().stream().map(tries -> cells(sheet, tries)).toList(),
                score(sheet, line),
                line.isProvisional());
    }

    static String score(ResultSheet sheet, ResultSheet.Line line) {
        return sheet.shownMs(line)
                .map(ms -> new FlightTime(ms).text(sheet.scoreDecimals()))
                .orElse("–");
    }

    private static List<ResultView.Cell> cells(ResultSheet sheet, List<ResultSheet.Try> tries) {
        return tries.isEmpty()
                ? List.of(new ResultView.Cell("", "–", "", ""))
                : tries.stream().map(t -> cell(sheet, t)).toList();
    }

    private static ResultView.Cell cell(ResultSheet sheet, ResultSheet.Try attempt) {
        String note = Stream.of(
                        note(attempt),
                        attempt.attempt().number().isRepeat()
                                ? attempt.attempt().number().nthTry()
                                : "",
                        attempt.protested() ? ResultNote.PROTESTED.words() : "")
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        boolean open = !attempt.attempt().phase().name().isOver();
        return new ResultView.Cell(
                attempt.attempt().id(),
                PageWords.cell(attempt.attempt(), sheet.event()),
                note,
                open ? "open" : attempt.isProvisional() ? "provisional" : "");
    }

    /** A try with what it is, in a line. */
    static String inFull(ResultSheet sheet, ResultSheet.Try attempt) {
        String note = note(attempt);
        return PageWords.cell(attempt.attempt(), sheet.event()) + (note.isEmpty() ? "" : " (" + note + ")");
    }

    /** What the notes that stand on this sheet mean. */
    static List<ResultView.Meaning> legend(List<ResultView.Row> rows) {
        Set<String> notes = rows.stream()
                .flatMap(row -> row.attempts().stream())
                .flatMap(List::stream)
                .map(ResultView.Cell::note)
                .collect(Collectors.toSet());
        List<ResultView.Meaning> meanings = new ArrayList<>();
        for (ResultNote note : ResultNote.values()) {
            if (notes.stream().anyMatch(note::standsIn)) {
                meanings.add(new ResultView.Meaning(note.words(), note.means()));
            }
        }
        if (rows.stream().anyMatch(ResultView.Row::provisional)) {
            meanings.add(new ResultView.Meaning("dashed", "provisional: not signed by all, or protested"));
        }
        return meanings;
    }

    private static String note(ResultSheet.Try attempt) {
        return note(attempt.attempt(), attempt.standing(), attempt.again());
    }

    /** What a try is that is no official flight with its own time; empty for one that is, or is not decided. */
    static String note(LiveAttempt attempt, Optional<FlightTally.Standing> standing, boolean again) {
        boolean timed = attempt.phase().name() == AttemptPhase.Name.OFFICIAL;
        return standing.map(is -> switch (is) {
                    case OFFICIAL -> "";
                    case ATTEMPT -> ResultNote.REPEATED.words();
                    case USED_UP -> timed ? ResultNote.SHORT_USED_UP.words() : ResultNote.USED_UP.words();
                    case VOID -> again ? ResultNote.FLOWN_AGAIN.words() : "";
                    case BEYOND -> ResultNote.BEYOND.words();
                })
                .orElse("");
    }

    private static Stream<ResultSheet.Try> official(ResultSheet.Line line) {
        return line.attempts().stream()
                .flatMap(List::stream)
                .filter(t -> t.officialMs().isPresent());
    }

    /** Over all official times of the sheet. */
    private static TimeAxis axis(ResultSheet sheet) {
        return TimeAxis.over(sheet.lines().stream()
                .flatMap(ResultWords::official)
                .flatMap(t -> t.officialMs().stream())
                .toList());
    }

    static List<ResultView.Tick> ticks(ResultSheet sheet) {
        if (sheet.lines().stream().flatMap(ResultWords::official).findAny().isEmpty()) {
            return List.of();
        }
        TimeAxis axis = axis(sheet);
        return axis.ticksMs().stream()
                .map(ms -> new ResultView.Tick(percent(axis.share(ms)), new FlightTime(ms).text(0)))
                .toList();
    }

    /** Where the axis begins and ends. */
    static String axisWords(ResultSheet sheet) {
        if (ticks(sheet).isEmpty()) {
            return "";
        }
        TimeAxis axis = axis(sheet);
        return "Dots: times from " + new FlightTime(axis.fromMs()).text(0) + " to "
                + new FlightTime(axis.toMs()).text(0) + ", a tick every " + new FlightTime(axis.stepMs()).text(0) + ".";
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f", share * 100);
    }

    /** Who leads, and by what. */
    static String finding(ResultSheet sheet) {
        List<ResultSheet.Line> leaders = sheet.leaders();
        if (leaders.isEmpty()) {
            return "No score yet";
        }
        String names = leaders.stream()
                .map(ResultSheet.Line::entry)
                .map(EntryAdded::name)
                .collect(Collectors.joining(leaders.size() == 2 ? " and " : ", "));
        if (leaders.size() > 1) {
            return names + " share the lead";
        }
        return names + " leads"
                + sheet.second()
                        .map(second -> by(sheet, leaders.get(0), second))
                        .orElse("");
    }

    private static String by(ResultSheet sheet, ResultSheet.Line first, ResultSheet.Line second) {
        long apart = sheet.shownMs(first).orElseThrow() - sheet.shownMs(second).orElseThrow();
        if (apart > 0) {
            return " by " + new FlightTime(apart).text(sheet.scoreDecimals());
        }
        return first.countedMs().equals(second.countedMs()) ? " by the best single time" : " by less than is shown";
    }

    /** The event, the rule of its score and how much of it is flown. */
    static String about(ResultSheet sheet, String score) {
        return sheet.event().name() + " · " + score.toLowerCase(Locale.ROOT) + " · " + sheet.flown() + " of "
                + sheet.flights() + " flights flown"
                + (sheet.hasProvisional() ? " · dashed: provisional" : "");
    }
}

package org.skeinday.exchange;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.ResultFinal;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.ResultState;
import org.skeinday.contest.EventAdded;
import org.skeinday.units.FlightTime;

/**
 * A result sheet for whoever wants to count it again: one row for each try, with what counts and why. Derived from the
 * record, so it is written and never read.
 */
public final class ResultTable {
    private static final List<String> HEADER = List.of(
            "place",
            "entry",
            "team",
            "division",
            "score",
            "score ms",
            "attempt",
            "try",
            "state",
            "time",
            "time ms",
            "counts",
            "why",
            "in score",
            "provisional",
            "result",
            "version");

    private ResultTable() {}

    /** With a header; an entry without a try has a row as well. */
    public static String csv(ResultSheet sheet, ResultState state) {
        List<List<String>> rows = new ArrayList<>(List.of(HEADER));
        sheet.lines().forEach(line -> {
            List<Map<String, String>> tries = tries(sheet, line);
            (tries.isEmpty() ? List.of(Map.<String, String>of()) : tries).forEach(one -> {
                Map<String, String> cells = entry(sheet, line);
                cells.putAll(one);
                cells.put("result", result(state));
                cells.put("version", String.valueOf(state.version()));
                rows.add(HEADER.stream().map(h -> cells.getOrDefault(h, "")).toList());
            });
        });
        return CsvText.of(rows);
    }

    /**
     * The event, its rules and its entries with their tries, as JSON has it: texts, whole numbers, lists.
     *
     * @param rules in words
     * @param changed what was changed of rules and windows after a flight was official
     */
    public static Map<String, Object> document(
            ResultSheet sheet, ResultState state, String rules, List<String> changed) {
        EventAdded event = sheet.event();
        Map<String, Object> document = new LinkedHashMap<>();
        document.put("event", event.name());
        document.put("day", event.day());
        document.put("result", result(state));
        document.put("version", state.version());
        state.last().ifPresent(last -> {
            document.put("made final", Instant.ofEpochMilli(last.atMs()).toString());
            document.put(
                    "changed since",
                    state.changes().stream().map(ResultFinal.Change::words).toList());
        });
        document.put("rules", rules);
        document.put("changed after the first official flight", changed);
        document.put("attempts", event.attempts());
        document.put("times have decimals", sheet.timeDecimals());
        document.put("scores have decimals", sheet.scoreDecimals());
        document.put(
                "ties", sheet.scoring().ties().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        document.put("ordered by", ranked(sheet));
        document.put(
                "entries",
                sheet.lines().stream()
                        .map(line -> {
                            Map<String, Object> entry = object(entry(sheet, line));
                            entry.put(
                                    "tries",
                                    tries(sheet, line).stream()
                                            .map(ResultTable::object)
                                            .toList());
                            return entry;
                        })
                        .toList());
        return document;
    }

    private static String result(ResultState state) {
        return state.isFinal() ? "final" : "provisional";
    }

    private static String ranked(ResultSheet sheet) {
        if (!sheet.scoring().isMean()) {
            return "the score";
        }
        return switch (sheet.scoring().ranks()) {
            case EXACT -> "the mean before it is rounded";
            case ROUNDED -> "the mean as it is rounded";
        };
    }

    /** Milliseconds and numbers of attempts are numbers, times as people write them are texts. */
    private static Map<String, Object> object(Map<String, String> cells) {
        Map<String, Object> object = new LinkedHashMap<>();
        cells.forEach((name, text) -> {
            if (!text.isEmpty()) {
                object.put(name, isNumber(name) ? (Object) Long.valueOf(text) : text);
            }
        });
        return object;
    }

    private static boolean isNumber(String column) {
        return List.of("place", "attempt", "try").contains(column) || column.endsWith(" ms");
    }

    private static Map<String, String> entry(ResultSheet sheet, ResultSheet.Line line) {
        Map<String, String> cells = new LinkedHashMap<>();
        String division = line.entry().division();
        cells.put("place", line.place() == 0 ? "" : String.valueOf(line.place()));
        cells.put("entry", line.entry().name());
        cells.put("team", line.entry().team());
        cells.put("division", division == null ? "" : division);
        cells.put(
                "score",
                sheet.shownMs(line)
                        .map(ms -> new FlightTime(ms).text(sheet.scoreDecimals()))
                        .orElse(""));
        cells.put("score ms", sheet.shownMs(line).map(String::valueOf).orElse(""));
        return cells;
    }

    private static List<Map<String, String>> tries(ResultSheet sheet, ResultSheet.Line line) {
        return line.attempts().stream()
                .flatMap(List::stream)
                .map(one -> attempted(sheet, one))
                .toList();
    }

    private static Map<String, String> attempted(ResultSheet sheet, ResultSheet.Try one) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("attempt", String.valueOf(one.attempt().number().rule()));
        cells.put("try", String.valueOf(one.attempt().number().nth()));
        cells.put("state", PhaseWords.of(one.attempt()));
        cells.put(
                "time",
                one.officialMs()
                        .map(ms -> new FlightTime(ms).text(sheet.timeDecimals()))
                        .orElse(""));
        cells.put("time ms", one.officialMs().map(String::valueOf).orElse(""));
        cells.put(
                "counts",
                one.standing()
                        .map(standing -> switch (standing) {
                            case OFFICIAL -> "official flight";
                            case ATTEMPT -> "may be repeated";
                            case USED_UP -> "used up without a time";
                            case VOID -> one.again() ? "flown again" : "no flight";
                            case BEYOND -> "beyond the last";
                        })
                        .orElse("not decided"));
        cells.put("why", one.why());
        cells.put("in score", one.inScore() ? "yes" : "no");
        cells.put("provisional", one.isProvisional() ? "yes" : "no");
        return cells;
    }
}

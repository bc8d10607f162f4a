package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.attempt.ResultFinal;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.ResultState;
import org.skeinday.attempt.action.MakeFinal;
import org.skeinday.attempt.store.ResultVersions;
import org.skeinday.contest.DayKind;
import org.skeinday.platform.db.Tx;

/**
 * Whether the result of the day at hand is final, in words.
 *
 * @param words empty where the officials elsewhere make it
 * @param changes since the version that was final last
 * @param lines that a version shows, over all entries
 */
public record ResultStanding(ResultState state, String words, List<String> changes, List<ResultFinal.Line> lines) {

    static ResultStanding of(Tx tx, Today today, ZoneId zone) {
        ResultSheet sheet = today.sheet(tx, "");
        List<ResultFinal.Line> lines = lines(sheet, rules(today));
        if (today.event().dayKind() != DayKind.HOSTING) {
            return new ResultStanding(new ResultState(Optional.empty(), List.of(), true), "", List.of(), lines);
        }
        var last = ResultVersions.last(tx, today.event().id());
        var state = new ResultState(
                last,
                last.map(before -> before.since(lines)).orElse(List.of()),
                sheet.hasProvisional() || MakeFinal.isUnsettled(today.byId().values()));
        return new ResultStanding(
                state,
                state.words(last.map(made -> PageWords.clock(made.atMs(), zone)).orElse("")),
                state.changes().stream().map(ResultFinal.Change::words).toList(),
                lines);
    }

    /** What a page showed, to be sent back by its form. */
    String seen() {
        return Integer.toHexString(lines.hashCode());
    }

    /** The rules by which the result is made, as a sentence. */
    static String rules(Today today) {
        String score =
                today.scoring().isMean() ? "; " + PageWords.scoreInFull(today).toLowerCase(Locale.ROOT) : "";
        return PageWords.rules(today.event())
                + score
                + PageWords.flightRules(today).replaceFirst("\\.$", "");
    }

    private static List<ResultFinal.Line> lines(ResultSheet sheet, String rules) {
        List<ResultFinal.Line> lines = new ArrayList<>();
        lines.add(new ResultFinal.Line("rules", "rules: " + rules));
        sheet.lines()
                .forEach(line -> lines.add(new ResultFinal.Line(line.entry().id(), shown(sheet, line))));
        return lines;
    }

    private static String shown(ResultSheet sheet, ResultSheet.Line line) {
        List<String> attempts = new ArrayList<>();
        for (int i = 0; i < line.attempts().size(); i++) {
            String tries = line.attempts().get(i).stream()
                    .map(one -> ResultWords.inFull(sheet, one))
                    .collect(Collectors.joining(", "));
            if (!tries.isEmpty()) {
                attempts.add((i + 1) + ": " + tries);
            }
        }
        return Stream.of(
                        (line.place() == 0 ? "–" : String.valueOf(line.place())) + " "
                                + line.entry().name(),
                        ResultWords.score(sheet, line),
                        String.join("; ", attempts))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" · "));
    }
}

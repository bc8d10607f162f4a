package org.skeinday.attempt;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.standing.DecidedFlight;
import org.skeinday.standing.FlightTally;
import org.skeinday.standing.Scoring;
import org.skeinday.standing.Standings;
import org.skeinday.timing.TimeRule;

/**
 * Who stands where in an event, with what, and what each try is. Made once; sheet, wall and downloads read it.
 *
 * @param columns how many attempts a line has: as many as the rules allow, more where they allowed more when one was flown
 * @param lines in their order: places first, entries without a score last, by name
 */
public record ResultSheet(EventAdded event, Scoring scoring, int columns, List<Line> lines) {
    private static final int MEAN_DECIMALS = 2;

    /**
     * One try of an attempt.
     *
     * @param standing what it is as a flight of the contest; empty for one that is not decided
     * @param why in words; empty for one that is not decided
     * @param again whether it was given up to be flown again, which uses up nothing
     * @param protested whether a protest is still open against it
     * @param inScore whether the entry's score is made of it
     */
    public record Try(
            LiveAttempt attempt,
            Optional<FlightTally.Standing> standing,
            String why,
            boolean again,
            boolean protested,
            boolean inScore) {

        /** Its official time, ms; empty without one. */
        public Optional<Long> officialMs() {
            return attempt.phase() instanceof AttemptPhase.Official official
                    ? Optional.of(official.officialMs())
                    : Optional.empty();
        }

        /** Whether its time may still change: a signature is owed, or a protest is open. */
        public boolean isProvisional() {
            return protested || attempt.phase() instanceof AttemptPhase.Official official && official.missing() > 0;
        }
    }

    /**
     * One entry.
     *
     * @param place 0 without a score
     * @param attempts for each attempt of the rules its tries, in the order flown
     * @param countedMs what it is ordered by, see {@link Scoring#countedMs}
     * @param flown how many of its official flights are used up
     */
    public record Line(EntryAdded entry, int place, List<List<Try>> attempts, Optional<Long> countedMs, int flown) {

        public Line {
            attempts = attempts.stream().map(List::copyOf).toList();
        }

        /** Whether any official time of it is provisional, and so its score and place. */
        public boolean isProvisional() {
            return attempts.stream()
                    .flatMap(List::stream)
                    .anyMatch(t -> t.isProvisional() && t.standing().isPresent());
        }
    }

    public ResultSheet {
        lines = List.copyOf(lines);
    }

    /**
     * What of an event the sheet is made of.
     *
     * @param attempts of the event, as the record has them
     * @param live the same as pages show them, by id
     * @param protested ids of those against which a protest is open
     */
    public record Known(
            EventAdded event,
            Scoring scoring,
            List<AttemptNow> attempts,
            Map<String, LiveAttempt> live,
            Set<String> protested) {

        private List<AttemptNow> of(EntryAdded entry) {
            return attempts.stream().filter(a -> a.entryId().equals(entry.id())).toList();
        }

        /** What was abandoned is no column. */
        private int columns() {
            return attempts.stream()
                    .filter(a -> a.verdict() != null && a.state() != State.SCRUBBED)
                    .mapToInt(a -> Math.max(event.attempts(), a.number().rule()))
                    .max()
                    .orElse(event.attempts());
        }

        private Line line(EntryAdded entry, Standings.Placed placed, int columns) {
            FlightTally tally = OfficialFlights.tally(of(entry), scoring);
            Map<String, FlightTally.Verdict> verdicts =
                    tally.verdicts().stream().collect(Collectors.toMap(FlightTally.Verdict::id, Function.identity()));
            List<String> official = tally.verdicts().stream()
                    .filter(v -> v.standing() == FlightTally.Standing.OFFICIAL)
                    .map(FlightTally.Verdict::id)
                    .toList();
            Set<String> inScore = scoring.inScore(tally.officialMs()).stream()
                    .map(official::get)
                    .collect(Collectors.toSet());
            List<List<Try>> tries = IntStream.rangeClosed(1, columns)
                    .mapToObj(number -> of(entry).stream()
                            .filter(a ->
                                    a.state() != State.SCRUBBED && a.number().rule() == number)
                            .map(a -> attempted(a, Optional.ofNullable(verdicts.get(a.id())), inScore))
                            .toList())
                    .toList();
            return new Line(entry, placed.place(), tries, placed.countedMs(), event.attempts() - tally.flightsLeft());
        }

        private Try attempted(AttemptNow attempt, Optional<FlightTally.Verdict> verdict, Set<String> inScore) {
            return new Try(
                    Optional.ofNullable(live.get(attempt.id())).orElseThrow(),
                    verdict.map(FlightTally.Verdict::standing),
                    verdict.map(FlightTally.Verdict::reason).orElse(""),
                    attempt.flownAgain(),
                    protested.contains(attempt.id()),
                    inScore.contains(attempt.id()));
        }
    }

    /** @param entries of which the places are made: all of them, or those of one division */
    public static ResultSheet of(Known known, List<EntryAdded> entries) {
        Map<String, List<DecidedFlight>> flown = new LinkedHashMap<>();
        entries.forEach(entry -> flown.put(entry.name(), OfficialFlights.of(known.of(entry))));
        Map<String, EntryAdded> byName =
                entries.stream().collect(Collectors.toMap(EntryAdded::name, Function.identity()));
        int columns = known.columns();
        List<Line> lines = known.scoring().order(flown).stream()
                .map(placed -> known.line(
                        Optional.ofNullable(byName.get(placed.entry())).orElseThrow(), placed, columns))
                .toList();
        return new ResultSheet(known.event(), known.scoring(), columns, lines);
    }

    /** What is shown of an entry's score, ms; empty without one. */
    public Optional<Long> shownMs(Line line) {
        return line.countedMs().map(scoring::shownMs);
    }

    /** Decimals of an official time, as the event's rules round it. */
    public int timeDecimals() {
        return TimeRule.decimals(event.roundToMs());
    }

    /** Decimals of a score: a mean has its own hundredths, whatever the rules round a single time to. */
    public int scoreDecimals() {
        return scoring.isMean() ? MEAN_DECIMALS : timeDecimals();
    }

    /** Those of the first place: more than one where they share it, none before the first score. */
    public List<Line> leaders() {
        return lines.stream().filter(line -> line.place() == 1).toList();
    }

    /** The first of those after the leaders that has a score. */
    public Optional<Line> second() {
        return lines.stream().filter(line -> line.place() > 1).findFirst();
    }

    /** How many official flights were used up, by all. */
    public int flown() {
        return lines.stream().mapToInt(Line::flown).sum();
    }

    /** How many there are to fly in all. */
    public int flights() {
        return lines.size() * event.attempts();
    }

    public boolean hasProvisional() {
        return lines.stream().anyMatch(Line::isProvisional);
    }
}

package org.skeinday.review.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.action.FlightWorth;
import org.skeinday.bench.web.BreakQuestion;
import org.skeinday.bench.web.WindQuestion;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.NotCounted;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Named;
import org.skeinday.units.FlightTime;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/** What waits for a word, and for which. */
final class OpenQuestions {
    private static final int MOST_SHOWN = 10;

    private final ZoneId zone;
    private final UnitSystem units;

    OpenQuestions(ZoneId zone, UnitSystem units) {
        this.zone = zone;
        this.units = units;
    }

    /** Of all flights, whatever is looked at, the last first; so many at once that they can be answered. */
    OpenQuestionsView of(
            List<FlightRow> flights,
            List<WindQuestion> winds,
            List<BreakQuestion> breaks,
            boolean coach,
            EveningQuery query) {
        List<OpenQuestionsView.Item> items =
                new ArrayList<>(flights.stream().flatMap(r -> item(r)).toList());
        Collections.reverse(items);
        return new OpenQuestionsView(
                summary(items, winds.size(), breaks.size()),
                query.address("/evening/word"),
                first(items),
                first(winds),
                first(breaks),
                coach,
                "",
                "");
    }

    private static <T> List<T> first(List<T> all) {
        return all.subList(0, Math.min(MOST_SHOWN, all.size()));
    }

    private static String summary(List<OpenQuestionsView.Item> items, int winds, int breaks) {
        long undecided = items.stream().filter(i -> !i.undecided().isEmpty()).count();
        long numbers = items.stream().filter(i -> !i.numbers().isEmpty()).count();
        List<String> words = new ArrayList<>();
        if (undecided > 0) {
            words.add(undecided == 1 ? "1 flight is undecided" : undecided + " flights are undecided");
        }
        if (numbers > 0) {
            words.add(
                    numbers == 1
                            ? "1 flight has numbers to be confirmed"
                            : numbers + " flights have numbers to be confirmed");
        }
        if (winds > 0) {
            words.add(winds == 1 ? "1 wind is asked about" : winds + " winds are asked about");
        }
        if (breaks > 0) {
            words.add(breaks == 1 ? "1 break waits for the coach" : breaks + " breaks wait for the coach");
        }
        return String.join(", ", words);
    }

    private Stream<OpenQuestionsView.Item> item(FlightRow row) {
        Flight flight = row.flight();
        List<OpenQuestionsView.Told> numbers = flight.counts().reason().isEmpty() ? numbers(flight) : List.of();
        String undecided = flight.counts().isUndecided() ? flight.counts().detail() : "";
        return undecided.isEmpty() && numbers.isEmpty()
                ? Stream.empty()
                : Stream.of(new OpenQuestionsView.Item(
                        row.id(),
                        title(row),
                        FlightTable.address(row),
                        undecided,
                        FlightWorth.seen(flight.said()),
                        numbers));
    }

    private String title(FlightRow row) {
        List<String> words = new ArrayList<>(List.of(FlightTable.label(row, zone)));
        Named motor = row.flown().motor();
        if (motor != null) {
            words.add(motor.name());
        }
        Long ms = row.flight().timeMs();
        if (ms != null) {
            words.add(new FlightTime(ms).text(0));
        }
        return String.join(", ", words);
    }

    /** What of a flight was offered, together, and what is doubted of it, each alone. */
    List<OpenQuestionsView.Told> numbers(Flight flight) {
        List<OpenQuestionsView.Told> told = new ArrayList<>();
        Map<String, String> offered = new LinkedHashMap<>();
        for (Measured what : Measured.values()) {
            Double number = flight.number(what);
            Counts counts = flight.said().measured(what, number);
            if (number != null && !counts.isYes()) {
                String value = what.word() + "=" + number;
                String words = what.words() + " " + text(what, number);
                if (counts.because() == NotCounted.OFFERED) {
                    offered.put(value, words);
                } else {
                    told.add(new OpenQuestionsView.Told(List.of(value), words + ": " + counts.words()));
                }
            }
        }
        if (!offered.isEmpty()) {
            told.add(
                    0,
                    new OpenQuestionsView.Told(
                            List.copyOf(offered.keySet()),
                            NotCounted.OFFERED.words() + ": " + String.join(", ", offered.values())));
        }
        return told;
    }

    private String text(Measured what, Double number) {
        return switch (what) {
            case PEAK_TORQUE, LAUNCH_TORQUE -> units.torque(Torque.ofNewtonMillimetres(number));
            case TIME -> new FlightTime(Math.round(number)).text(0);
            case CRANK_TURNS, AT_FULL, BACK_OFF, REMAINING, FLIGHT -> PlainNumber.of(Objects.requireNonNull(number));
        };
    }
}

package org.skeinday.prepare.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.NotCounted;
import org.skeinday.exchange.Day;
import org.skeinday.prepare.FlightLog;
import org.skeinday.units.FlightTime;

/** Flights as lines of a flight log. */
final class LogLines {
    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", java.util.Locale.ROOT);

    private final Map<String, String> names = new HashMap<>();
    private final ZoneId zone;
    private final Map<String, Flight> flown;

    /** @param flown what each flight is worth as evidence, by id */
    LogLines(Day day, ZoneId zone, Map<String, Flight> flown) {
        this.zone = zone;
        this.flown = flown;
        day.models().forEach(m -> names.put(m.id(), m.name()));
        day.motors().forEach(m -> names.put(m.id(), m.tag()));
    }

    String when(PracticeFlown flight) {
        return WHEN.format(Instant.ofEpochMilli(flight.flownAtMs()).atZone(zone));
    }

    /** When, then the columns in their order; a number that was offered or is doubted is none in a log. */
    List<String> row(PracticeFlown flight, List<String> columns) {
        List<String> cells = new ArrayList<>();
        cells.add(when(flight));
        columns.forEach(column -> cells.add(
                FlightLog.of(column).filter(what -> !isMeasured(flight, what)).isPresent()
                        ? ""
                        : cell(flight, column)));
        return cells;
    }

    /** Whether a number is there and nothing speaks against it. */
    boolean isMeasured(PracticeFlown flight, Measured what) {
        Flight worth = flown.get(flight.id());
        Double number = worth == null ? null : worth.number(what);
        return worth != null
                && number != null
                && worth.said().measured(what, number).isYes();
    }

    /** Numbers that were offered or are doubted, and that nobody has confirmed: offered ones together, each doubt alone. */
    List<PracticeView.Told> unconfirmed(PracticeFlown flight) {
        Flight worth = flown.get(flight.id());
        List<PracticeView.Told> told = new ArrayList<>();
        List<Measured> offered = new ArrayList<>();
        for (Measured what : worth == null ? new Measured[0] : Measured.values()) {
            Counts counts = Objects.requireNonNull(worth).said().measured(what, worth.number(what));
            if (counts.because() == NotCounted.OFFERED) {
                offered.add(what);
            } else if (!counts.isYes()) {
                told.add(new PracticeView.Told(what.words() + " " + counts.words(), List.of(sent(worth, what))));
            }
        }
        if (worth != null && !offered.isEmpty()) {
            String names = offered.stream().map(Measured::words).collect(Collectors.joining(", "));
            told.add(
                    0,
                    new PracticeView.Told(
                            "offered: " + names,
                            offered.stream().map(what -> sent(worth, what)).toList()));
        }
        return told;
    }

    /** A number as a form sends it back. */
    private static String sent(Flight flight, Measured what) {
        return what.word() + "=" + flight.number(what);
    }

    String cell(PracticeFlown flight, String column) {
        return switch (column) {
            case "model" -> flight.modelId() == null ? "" : names.getOrDefault(flight.modelId(), "");
            case "motor" -> names.getOrDefault(flight.motorId(), "");
            case "turns" -> text(flight.crankTurns());
            case "torque" -> torque(flight.stopTorqueTyped());
            case "launch" -> torque(flight.launchTorqueTyped());
            case "time" -> new FlightTime(flight.durationMs()).text(1);
            case "remaining" -> text(flight.remainingCrankTurns());
            case "note" -> flight.note() == null ? "" : flight.note();
            default -> "";
        };
    }

    /** As it was typed: it is evidence, whatever units its reader likes. */
    private static String torque(@Nullable String typed) {
        return typed == null ? "" : typed;
    }

    private static String text(@Nullable Number number) {
        return number == null
                ? ""
                : new java.math.BigDecimal(number.toString())
                        .stripTrailingZeros()
                        .toPlainString();
    }
}

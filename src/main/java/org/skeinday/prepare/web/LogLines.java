package org.skeinday.prepare.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.PracticeFlown;
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

    /** Numbers that were offered or are doubted, and that nobody has confirmed. */
    List<Measured> unconfirmed(PracticeFlown flight) {
        Flight worth = flown.get(flight.id());
        return worth == null
                ? List.of()
                : Arrays.stream(Measured.values())
                        .filter(what -> worth.number(what) != null && !isMeasured(flight, what))
                        .toList();
    }

    /** For example {@code offered: crank turns, launch torque; doubted: time}. */
    String whyUnconfirmed(PracticeFlown flight, List<Measured> open) {
        Map<String, List<String>> byCode = new LinkedHashMap<>();
        for (Measured what : open) {
            Flight worth = Objects.requireNonNull(flown.get(flight.id()));
            NotCounted because = worth.said().measured(what, worth.number(what)).because();
            byCode.computeIfAbsent(because == NotCounted.OFFERED ? "offered" : "doubted", c -> new ArrayList<>())
                    .add(what.words());
        }
        List<String> words = new ArrayList<>();
        byCode.forEach((code, which) -> words.add(code + ": " + String.join(", ", which)));
        return String.join("; ", words);
    }

    /** A number as a form sends it back. */
    String sent(PracticeFlown flight, Measured what) {
        return what.word() + "="
                + Objects.requireNonNull(flown.get(flight.id())).number(what);
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

package org.skeinday.prepare.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.exchange.Day;
import org.skeinday.units.FlightTime;

/** Flights as lines of a flight log. */
final class LogLines {
    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", java.util.Locale.ROOT);

    private final Map<String, String> names = new HashMap<>();
    private final ZoneId zone;

    LogLines(Day day, ZoneId zone) {
        this.zone = zone;
        day.models().forEach(m -> names.put(m.id(), m.name()));
        day.motors().forEach(m -> names.put(m.id(), m.tag()));
    }

    String when(PracticeFlown flight) {
        return WHEN.format(Instant.ofEpochMilli(flight.flownAtMs()).atZone(zone));
    }

    /** When, then the columns in their order. */
    List<String> row(PracticeFlown flight, List<String> columns) {
        List<String> cells = new ArrayList<>();
        cells.add(when(flight));
        columns.forEach(column -> cells.add(cell(flight, column)));
        return cells;
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

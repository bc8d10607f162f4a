package org.skeinday.exchange;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.UseNumber;
import org.skeinday.attempt.WindingEvidence;
import org.skeinday.motor.MotorAdded;

/**
 * The columns <em>uses</em> and <em>use</em> of files: with what their own rows tell, each motor has been used as often as in the record they
 * come from. What no row tells (practice before a season, winds that nobody flew, another event's flights) stands there, and each row says which
 * use it was in that record.
 */
final class PartUses {
    private final Day part;
    private final MotorUses record;
    private final ZoneId zone;

    /** @param record of everything, also of what the files leave out */
    PartUses(Day part, MotorUses record, ZoneId zone) {
        this.part = part;
        this.record = record;
        this.zone = zone;
    }

    /** The part with its motors, and with the use that each of its flights was. @param until day on which it ends; null for none */
    Day told(@Nullable LocalDate until) {
        Stream<Optional<UseNumber>> attempts =
                part.attempts().stream().map(a -> number(a.id(), String.valueOf(a.motorId())));
        Stream<Optional<UseNumber>> flights = part.flights().stream().map(f -> number(f.id(), f.motorId()));
        return part.with(
                motors(until),
                Stream.concat(attempts, flights).flatMap(Optional::stream).toList());
    }

    private Optional<UseNumber> number(String flight, String motor) {
        return record.has(motor, flight)
                ? Optional.of(new UseNumber(flight, motor, record.number(motor, flight)))
                : Optional.empty();
    }

    private List<MotorAdded> motors(@Nullable LocalDate until) {
        MotorUses told = MotorUses.of(
                WindingEvidence.ofFiles(
                        part.events(),
                        part.attempts(),
                        part.flights(),
                        part.more().places()),
                part.motors(),
                part.batches());
        LocalDate last = until == null ? null : lastTold(until);
        return part.motors().stream()
                .map(motor -> motor.used(untold(motor, told, last)))
                .toList();
    }

    /** The flights of a practice night may go on after the day that its event has. */
    private LocalDate lastTold(LocalDate until) {
        return part.flights().stream()
                .map(flight -> LocalDate.ofInstant(Instant.ofEpochMilli(flight.flownAtMs()), zone))
                .reduce(until, (a, b) -> b.isAfter(a) ? b : a);
    }

    private int untold(MotorAdded motor, MotorUses told, @Nullable LocalDate last) {
        int all = last == null ? record.of(motor.id()) : record.until(motor.id(), last, zone);
        int byRows = told.of(motor.id()) - motor.uses();
        return Math.min(MotorAdded.MOST_USES, Math.max(0, all - byRows));
    }
}

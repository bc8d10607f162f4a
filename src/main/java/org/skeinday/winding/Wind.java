package org.skeinday.winding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.WhatCounts;
import org.skeinday.motor.Hold;
import org.skeinday.motor.Resolution;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Torque;

/**
 * One wind, from the first crank turn until the motor leaves the meter, made of what was tapped and counted. The order in
 * which taps came in does not matter: they stand as they were made, each once. Any phase may be missing. After the motor
 * left the meter the needle says nothing.
 *
 * @param phases and {@code marks}: in the order in which they were made
 * @param floor marks of tape that the winder was seen at, each once, in the order in which they were reached
 * @param counted null until counts are entered
 * @param held what was typed of its hold, by time
 */
public record Wind(
        WindBegun begun,
        List<WindPhase> phases,
        List<WindMark> marks,
        List<FloorMarkReached> floor,
        @Nullable WindCounted counted,
        List<HeldRead> held) {
    /** In the order in which a wind goes through them. */
    public enum Phase {
        WINDING_AT_FULL_STRETCH,
        WALKING_IN,
        /** Cranking has stopped; turns are taken off. */
        STOPPED,
        HOLDING,
        /** What is left of the motor hangs on two hooks. */
        BROKE,
        OFF_METER
    }

    /** How finely its meter is read, in N·mm: tenths of a division by eye. */
    public Resolution read() {
        Double division = begun.divisionNmm();
        return division == null ? Resolution.EXACT : Resolution.ofMeter(division);
    }

    /** @throws IllegalArgumentException for a tap or count of another wind */
    public Wind {
        String id = begun.id();
        Stream.of(
                        phases.stream().map(WindPhase::windId),
                        marks.stream().map(WindMark::windId),
                        floor.stream().map(FloorMarkReached::windId),
                        Stream.ofNullable(counted).map(WindCounted::windId))
                .flatMap(of -> of)
                .forEach(of -> sameWind(id, of));
        phases = once(phases, WindPhase.AS_MADE, WindPhase::id);
        marks = once(marks, WindMark.AS_MADE, WindMark::id);
        held = held.stream()
                .sorted(Comparator.comparingDouble(HeldRead::seconds))
                .toList();
        floor = once(floor, FloorMarkReached.AS_REACHED, mark -> String.valueOf(mark.number()));
    }

    public static Wind of(
            WindBegun begun, List<WindPhase> phases, List<WindMark> marks, @Nullable WindCounted counted) {
        return new Wind(begun, phases, marks, List.of(), counted, List.of());
    }

    /** The same with its turns counted. */
    public Wind with(WindCounted turns) {
        return new Wind(begun, phases, marks, floor, turns, held);
    }

    /** The same with one of its marks as it is now. */
    public Wind with(WindMark changed) {
        return new Wind(
                begun,
                phases,
                marks.stream()
                        .map(m -> m.id().equals(changed.id()) ? changed : m)
                        .toList(),
                floor,
                counted,
                held);
    }

    /** The same with one mark more. */
    public Wind and(WindMark more) {
        List<WindMark> all = new ArrayList<>(marks);
        all.add(more);
        return new Wind(begun, phases, all, floor, counted, held);
    }

    /** The same without what was undone. @param tap id of a mark or a step of winding; of another nothing changes */
    public Wind without(String tap) {
        return new Wind(
                begun,
                phases.stream().filter(p -> !p.id().equals(tap)).toList(),
                marks.stream().filter(m -> !m.id().equals(tap)).toList(),
                floor,
                counted,
                held);
    }

    /** The same after one more step of winding. */
    public Wind with(WindPhase tap) {
        List<WindPhase> more = new ArrayList<>(phases);
        more.add(tap);
        return new Wind(begun, more, marks, floor, counted, held);
    }

    private static void sameWind(String wind, String of) {
        if (!of.equals(wind)) {
            throw new IllegalArgumentException("Taps and counts must be of wind " + wind + ", but one was of " + of);
        }
    }

    private static <T> List<T> once(List<T> taps, Comparator<T> asMade, Function<T, String> id) {
        TreeMap<String, T> byId = new TreeMap<>();
        taps.stream().sorted(asMade).forEach(tap -> byId.putIfAbsent(id.apply(tap), tap));
        return byId.values().stream().sorted(asMade).toList();
    }

    /** After all taps so far. */
    public Phase phase() {
        return WindTimes.said(phases).now();
    }

    /**
     * Since when its last turn is on, ms since 1970 UTC: from there on live rings are held. Turns that come off and the meter
     * that it hangs on or not do not begin it anew, nor does a stop that is said twice or a break that was none. Where the
     * stop was not tapped, the back-off tells it. Empty while it is wound.
     */
    public Optional<Long> heldSince() {
        return WindHold.since(phases);
    }

    /** Whether somebody said that more turns go on after all, and no last turn since. */
    public boolean turnsGoOn() {
        return WindHold.turnsGoOn(phases);
    }

    /** Whether its turns enter fits; of what was read of the needle the doubts have a word too. */
    public Counts counts() {
        return counts(0);
    }

    /** Whether what was read of it enters fits. @param openDoubts readings that are still asked about */
    public Counts counts(int openDoubts) {
        return WhatCounts.wind(counted != null, paced(), openDoubts);
    }

    /** Cranking to a metronome, as begun or as counted. */
    public boolean paced() {
        return begun.paced() || counted != null && counted.paced();
    }

    /**
     * The needle's marks that count, corrections and what was left out taken away, until the motor broke or left the
     * meter.
     */
    public List<Crossing> crossings() {
        @Nullable Long end = WindTimes.said(phases).needleEnds();
        return Crossings.of(marks, phases).stream()
                .filter(c -> end == null || c.elapsedMs() <= end)
                .toList();
    }

    WindTimes times() {
        boolean nothingTakenOff =
                counted != null && counted.backOffCrankTurns() != null && counted.backOffCrankTurns() == 0;
        return WindTimes.said(phases).filled(crossings(), counted != null, nothingTakenOff);
    }

    /** The needle's mark, 0 or more, at {@code elapsedMs} after the first crank turn. */
    public int level(long elapsedMs) {
        return crossings().stream()
                .filter(c -> c.elapsedMs() <= elapsedMs)
                .reduce((a, b) -> b)
                .map(Crossing::level)
                .orElse(0);
    }

    /** Empty while it is not known what one division is worth. */
    public Optional<Torque> torque(int level) {
        return Optional.ofNullable(begun.divisionNmm()).map(d -> Torque.ofNewtonMillimetres(d * level));
    }

    /** The floor mark nearest the meter at which the winder was seen, 1 to 5; empty while nobody said so. */
    public OptionalInt floorMark() {
        return floor.stream().mapToInt(FloorMarkReached::number).max();
    }

    /** The last mark that is not above the ceiling; empty without a ceiling or a division. */
    public OptionalInt ceilingLevel() {
        @Nullable Double division = begun.divisionNmm();
        @Nullable Double ceiling = begun.ceilingNmm();
        return division == null || ceiling == null ? OptionalInt.empty() : OptionalInt.of(levelOf(ceiling, division));
    }

    /** The last mark that is not above a torque. @param divisionNmm above 0 */
    public static int levelOf(double torqueNmm, double divisionNmm) {
        return (int) Math.floor(torqueNmm / divisionNmm * (1 + BINARY_HAIR));
    }

    /** 0.9 / 0.05 is 18 and not a hair less. */
    static final double BINARY_HAIR = 1e-9;

    /** The highest mark that the needle reached; empty when nobody read it. */
    public OptionalInt peakLevel() {
        return crossings().stream().mapToInt(Crossing::level).max();
    }

    public Optional<Torque> peakTorque() {
        return torque(peakLevel());
    }

    /** The needle's mark as the motor left the meter, or now; empty when nobody read it and for a motor that broke. */
    public OptionalInt launchLevel() {
        return broke().isPresent() ? OptionalInt.empty() : lastLevel();
    }

    private OptionalInt lastLevel() {
        return crossings().stream().mapToInt(Crossing::level).reduce((a, b) -> b);
    }

    /** When the motor broke, in ms after the first crank turn; empty when it did not. */
    public OptionalLong broke() {
        @Nullable Long at = WindTimes.said(phases).broke();
        return at == null ? OptionalLong.empty() : OptionalLong.of(at);
    }

    /** By the needle's last mark before the motor broke; empty when it did not, or nobody read the needle. */
    public Optional<Torque> breakTorque() {
        return broke().isPresent() ? torque(lastLevel()).filter(t -> t.newtonMillimetres() > 0) : Optional.empty();
    }

    public Optional<Torque> launchTorque() {
        return torque(launchLevel());
    }

    private Optional<Torque> torque(OptionalInt level) {
        return level.isPresent() ? torque(level.getAsInt()) : Optional.empty();
    }

    /** How many turns are in its motor. */
    public WindTurns turns() {
        return new WindTurns(this);
    }

    /** While turns went on, walk-in included, up to the stop; empty while the division or the turns are not known. */
    public List<TorqueReading> windingReadings() {
        return WindReadings.of(this).winding();
    }

    /** While turns were taken off; empty until the last of them is. */
    public List<TorqueReading> unwindingReadings() {
        return WindReadings.of(this).unwinding();
    }

    /** While the motor waited on the meter, from the last turn taken off: as tapped and as typed. */
    public List<Hold.Reading> holdReadings() {
        return WindReadings.of(this).hold();
    }

    /** The one word for the winder now; none once cranking has stopped. */
    public Word word(long elapsedMs) {
        if (phase().compareTo(Phase.STOPPED) >= 0) {
            return Word.NONE;
        }
        OptionalInt ceiling = ceilingLevel();
        return Word.of(
                level(elapsedMs),
                ceiling.isPresent() ? ceiling.getAsInt() : null,
                turns().at(elapsedMs).map(Count::crankTurns).orElse(null),
                begun.targetCrankTurns(),
                begun.stopRule());
    }
}

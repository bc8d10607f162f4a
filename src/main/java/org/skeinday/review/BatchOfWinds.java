package org.skeinday.review;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.motor.Hold;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.BatchWinds;
import org.skeinday.winding.Wind;

/**
 * The counted winds of one batch, as findings and pictures ask for them. Winds to a metronome and those of which no
 * meter is known are left out of all of it.
 *
 * @param winds in the order in which they were begun
 * @param motors of the batch, by id
 * @param uses which use of its motor each wind was
 */
public record BatchOfWinds(Named batch, List<Wind> winds, Map<String, Of> motors, MotorUses uses) {
    /** So many lines find room in one picture: the last ones. */
    public static final int MOST_DRAWN = 12;

    /** @param breakingTurns motor turns above 0; null while not known */
    public record Of(
            Named motor, BatchWinds.Size size, @Nullable Double breakingTurns) {}

    public BatchOfWinds {
        winds = winds.stream()
                .filter(w -> w.counts().isYes() && w.begun().meter() != null)
                .filter(w -> motors.containsKey(w.begun().motorId()))
                .toList();
    }

    private Of of(Wind wind) {
        return Objects.requireNonNull(motors.get(wind.begun().motorId()));
    }

    /** The flight's, else the wind's own. */
    static String id(Wind wind) {
        String attempt = wind.begun().attemptId();
        return attempt == null ? wind.begun().id() : attempt;
    }

    /** Of each wind that reaches this share of breaking turns. @param zone of the hall */
    public List<TorqueAtShare> shares(double share, ZoneId zone) {
        return winds.stream().flatMap(w -> share(w, share, zone).stream()).toList();
    }

    private Optional<TorqueAtShare> share(Wind wind, double share, ZoneId zone) {
        Of of = of(wind);
        List<TorqueReading> readings = wind.windingReadings();
        if (of.breakingTurns() == null
                || readings.stream().map(TorqueReading::motorTurns).distinct().count() < 2) {
            return Optional.empty();
        }
        var size = new TorqueAtShare.Size(of.size().loop(), of.size().mass(), of.breakingTurns());
        return TorqueAtShare.at(share, TorqueCurve.of(readings), size)
                .map(nmm -> new TorqueAtShare(
                        id(wind),
                        of.motor(),
                        batch,
                        Objects.requireNonNull(wind.begun().meter()),
                        Instant.ofEpochMilli(wind.begun().atMs()).atZone(zone).toLocalDate(),
                        nmm));
    }

    /** Of each wind whose hold was read long enough. */
    public List<HeldWind> holds() {
        return winds.stream().flatMap(w -> hold(w).stream()).toList();
    }

    private Optional<HeldWind> hold(Wind wind) {
        try {
            return Optional.of(new HeldWind(id(wind), batch, Hold.of(wind.holdReadings())));
        } catch (IllegalArgumentException e) { // too few readings later than 5 s: such a hold says nothing
            return Optional.empty();
        }
    }

    /** The last winds of these flights on the meter that most of them were read from, with the band of all on it. */
    public Picture picture(Set<String> flights, UnitSystem units) {
        List<Wind> shown = shown(flights, w -> !w.windingReadings().isEmpty());
        BatchWinds earlier = onOneMeter(shown);
        return WindPictures.winds(
                batch.name(),
                shown.stream()
                        .map(w -> new WindPictures.Read(id(w), name(w), w.windingReadings()))
                        .toList(),
                shown.isEmpty()
                        ? null
                        : earlier.winding(of(shown.get(shown.size() - 1)).size())
                                .orElse(null),
                units);
    }

    /** The last holds of these flights, on one meter, with the bleed of all on it. */
    public Picture heldPicture(Set<String> flights, UnitSystem units) {
        List<Wind> shown = shown(flights, w -> hold(w).isPresent());
        return WindPictures.holds(
                batch.name(),
                shown.stream()
                        .map(w -> new WindPictures.HoldRead(id(w), name(w), afterTheFirst(w)))
                        .toList(),
                onOneMeter(shown).bleed(),
                units);
    }

    /** On the logarithm of time there is no moment zero. */
    private static List<Hold.Reading> afterTheFirst(Wind wind) {
        return wind.holdReadings().stream().filter(r -> r.seconds() > 0).toList();
    }

    private BatchWinds onOneMeter(List<Wind> shown) {
        String meter = shown.isEmpty() ? null : shown.get(0).begun().meter();
        return BatchWinds.of(
                winds,
                motors.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, e -> e.getValue().size())),
                meter);
    }

    private List<Wind> shown(Set<String> flights, java.util.function.Predicate<Wind> has) {
        List<Wind> of = winds.stream()
                .filter(w -> flights.contains(id(w)) && has.test(w))
                .toList();
        String meter = of.stream()
                .collect(Collectors.groupingBy(
                        w -> Objects.requireNonNull(w.begun().meter()), Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.<String, Long>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .map(Map.Entry::getKey)
                .orElse("");
        List<Wind> onIt =
                of.stream().filter(w -> meter.equals(w.begun().meter())).toList();
        return onIt.subList(Math.max(0, onIt.size() - MOST_DRAWN), onIt.size());
    }

    private String name(Wind wind) {
        return of(wind).motor().name() + ", use "
                + uses.number(wind.begun().motorId(), wind.begun().id());
    }
}

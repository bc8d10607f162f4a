package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.EventAdded;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;

/**
 * Which windings a record tells of, each once: an attempt with a motor is one, however often it was gone on with; so is a
 * wind outside any attempt together with the practice flight that was logged of it. A wind that was run back is one of
 * its own, a use as it was judged then.
 */
final class WindingsOnRecord {
    private final WindingEvidence evidence;
    private final Function<String, @Nullable Double> breakingTurns;
    private final Map<String, EventAdded> events;
    private final CardMoments moments;
    private final Set<String> backAfterAll = new HashSet<>();
    private final Set<String> windsRunBack = new HashSet<>();
    private final Map<String, List<WindBegun>> ofAttempts;
    private final List<WindBegun> alone;

    /** @param breakingTurns of a motor by its id, in motor turns; null while not known */
    WindingsOnRecord(WindingEvidence evidence, Function<String, @Nullable Double> breakingTurns) {
        this.evidence = evidence;
        this.breakingTurns = breakingTurns;
        this.events = evidence.events().stream().collect(Collectors.toMap(EventAdded::id, Function.identity()));
        Map<String, String> days = new HashMap<>();
        events.forEach((id, event) -> days.put(id, event.day()));
        this.moments = new CardMoments(evidence.attempts(), days);
        for (TurnsRunBack back : evidence.runBacks()) {
            if (back.windId() != null) {
                windsRunBack.add(back.windId());
            }
            if (State.of(back.state()) == State.SCRUBBED) {
                backAfterAll.add(back.attemptId());
            }
        }
        List<WindBegun> inOrder = evidence.winds().stream()
                .sorted(Comparator.comparingLong(WindBegun::atMs).thenComparing(WindBegun::id))
                .toList();
        this.ofAttempts = inOrder.stream()
                .filter(w -> w.attemptId() != null)
                .collect(Collectors.groupingBy(w -> Objects.requireNonNull(w.attemptId())));
        this.alone = inOrder.stream().filter(w -> w.attemptId() == null).toList();
    }

    /** In the order in which they used motors up. */
    List<MotorWinding> all() {
        return Stream.of(attempts(), runBacks(), outside())
                .flatMap(List::stream)
                .sorted(MotorWinding.ORDER)
                .toList();
    }

    private List<MotorWinding> attempts() {
        List<MotorWinding> windings = new ArrayList<>();
        for (AttemptImported attempt : evidence.attempts()) {
            Map<String, List<WindBegun>> winds = ofAttempts.getOrDefault(attempt.id(), List.of()).stream()
                    .filter(w -> !windsRunBack.contains(w.id()))
                    .collect(Collectors.groupingBy(WindBegun::motorId));
            String own = attempt.motorId();
            if (own != null && !winds.containsKey(own) && wasWound(attempt)) {
                windings.add(unread(attempt, own, winds.isEmpty()));
            }
            boolean one = winds.size() == 1;
            winds.forEach((motor, read) -> windings.add(read(attempt, motor, read, one && motor.equals(own))));
        }
        return windings;
    }

    /** Nobody read the wind, but it was begun, counted or flown. */
    private boolean wasWound(AttemptImported a) {
        boolean wound = a.windingAtMs() != null || a.releasedAtMs() != null;
        boolean counted = a.stopCountCrankTurns() != null && a.stopCountCrankTurns() > 0;
        return (wound || counted || State.of(a.state()).hasLeftTheHand()) && !backAfterAll.contains(a.id());
    }

    /** @param alone whether the attempt's stop count can be of this motor only */
    private MotorWinding unread(AttemptImported attempt, String motor, boolean alone) {
        EventAdded event = events.get(attempt.eventId());
        Integer stop = alone ? attempt.stopCountCrankTurns() : null;
        Double ratio = evidence.placeRatios().getOrDefault(attempt.id(), event == null ? null : event.winderRatio());
        Double turns = stop == null || ratio == null ? null : (Double) (stop * ratio);
        return of(attempt, null, motor, moments.of(attempt), turns);
    }

    /** @param alone whether the attempt's stop count can be of this motor only */
    private MotorWinding read(AttemptImported attempt, String motor, List<WindBegun> winds, boolean alone) {
        WindBegun first = winds.get(0);
        Integer stop = alone ? attempt.stopCountCrankTurns() : null;
        Double typed = stop == null
                ? null
                : (Double) (stop * winds.get(winds.size() - 1).ratio());
        List<WindBegun> counted =
                winds.stream().filter(wind -> !isOffered(wind.id())).toList();
        Double most = most(counted);
        if (most == null) {
            boolean typedCounts = typed != null && !isOffered(attempt.id());
            Double proposed = most(winds);
            most = typedCounts || proposed == null ? typed : proposed;
        }
        return of(attempt, first.id(), motor, first.atMs(), most);
    }

    /** Of winds that went on one upon the other the most turns; null where nobody counted any. */
    private @Nullable Double most(List<WindBegun> winds) {
        return winds.stream()
                .map(this::turns)
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder())
                .orElse(null);
    }

    /** Whether a form only proposed its turns. */
    private boolean isOffered(String id) {
        return evidence.offered().contains(id);
    }

    private MotorWinding of(
            AttemptImported attempt, @Nullable String wind, String motor, long atMs, @Nullable Double turns) {
        EventAdded event = events.get(attempt.eventId());
        return new MotorWinding(
                attempt.id(),
                wind,
                motor,
                event == null ? null : event.day(),
                attempt.number(),
                atMs,
                isUse(motor, turns));
    }

    private List<MotorWinding> runBacks() {
        Map<String, AttemptImported> attempts =
                evidence.attempts().stream().collect(Collectors.toMap(AttemptImported::id, Function.identity()));
        List<MotorWinding> windings = new ArrayList<>();
        for (TurnsRunBack back : evidence.runBacks()) {
            AttemptImported of = attempts.get(back.attemptId());
            EventAdded event = of == null ? null : events.get(of.eventId());
            windings.add(new MotorWinding(
                    back.id(),
                    back.windId(),
                    back.motorId(),
                    event == null ? null : event.day(),
                    of == null ? 0 : of.number(),
                    back.atMs(),
                    back.use()));
        }
        return windings;
    }

    private List<MotorWinding> outside() {
        Map<String, WindBegun> logged = LoggedFlights.winds(alone, evidence.flights());
        Set<String> taken = logged.values().stream().map(WindBegun::id).collect(Collectors.toSet());
        List<MotorWinding> windings = new ArrayList<>();
        for (PracticeFlown flight : evidence.flights()) {
            WindBegun wind = logged.get(flight.id());
            Integer stop = flight.crankTurns();
            Double typed = stop == null ? null : (Double) (stop * flight.winderRatio());
            Double counted = wind == null ? null : turns(wind);
            boolean better = wind != null && isOffered(flight.id()) && !isOffered(wind.id());
            Double turns = typed == null || better && counted != null ? counted : typed;
            windings.add(
                    outside(flight.id(), wind == null ? null : wind.id(), flight.motorId(), flight.flownAtMs(), turns));
        }
        alone.stream()
                .filter(wind -> !taken.contains(wind.id()))
                .forEach(wind -> windings.add(outside(wind.id(), wind.id(), wind.motorId(), wind.atMs(), turns(wind))));
        return windings;
    }

    private MotorWinding outside(String id, @Nullable String wind, String motor, long atMs, @Nullable Double turns) {
        return new MotorWinding(id, wind, motor, null, 0, atMs, isUse(motor, turns));
    }

    private @Nullable Double turns(WindBegun wind) {
        WindCounted counted = evidence.counted().get(wind.id());
        return counted == null ? null : (Double) (counted.stopCrankTurns() * wind.ratio());
    }

    /** Turns that nobody counted may have been all of them. */
    private boolean isUse(String motor, @Nullable Double motorTurns) {
        return motorTurns == null || MotorUses.isUse(motorTurns, breakingTurns.apply(motor));
    }
}

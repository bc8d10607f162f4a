package org.skeinday.attempt.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.FlightTime;

/** Makes the Next attempt card: the attempt under way, or the entry that must come next. */
final class CardOf {
    /** From the first crank turn to the release (common practice; own history later). */
    private static final long WIND_TO_RELEASE_MS = 210_000;

    private final Tx tx;
    private final Today today;
    private final Supplier<String> newId;

    CardOf(Tx tx, Today today, Supplier<String> newId) {
        this.tx = tx;
        this.today = today;
        this.newId = newId;
    }

    NowView.@Nullable Card card(long nowMs) {
        Optional<AttemptNow> open = today.underWay();
        if (open.isPresent()) {
            return underWay(open.get());
        }
        return today.nextEntry(nowMs).map(entry -> toCall(entry, nowMs)).orElse(null);
    }

    private NowView.Card toCall(EntryAdded entry, long nowMs) {
        List<ModelAdded> models = ModelStore.ofEntry(tx, entry.id());
        List<MotorAdded> motors = entry.own() ? inOrder(entry, models) : List.of();
        List<NowView.Line> lines = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        if (!motors.isEmpty()) {
            PlanLines plan = PlanLines.of(tx, today.event(), motors.get(0), models.isEmpty() ? null : models.get(0));
            lines.addAll(plan.lines);
            warnings.addAll(plan.warnings);
            if (motors.size() > 1) {
                lines.add(new NowView.Line("spare", motors.get(1).tag()));
            }
        }
        Optional<WindowAdded> window = today.window(entry);
        boolean open = window.map(w -> w.opensAtMs() <= nowMs).orElse(true);
        return new NowView.Card(
                entry.name() + ", attempt " + (today.of(entry).size() + 1),
                "next",
                open ? "start winding at the latest in" : "the window opens in",
                window.map(w -> open ? w.closesAtMs() - WIND_TO_RELEASE_MS : w.opensAtMs())
                        .orElse(0L),
                entry.id(),
                "",
                lines,
                warnings,
                models.stream().map(m -> new NowView.Choice(m.id(), m.name())).toList(),
                motors.stream().map(this::choice).toList(),
                List.of(),
                newId.get(),
                "");
    }

    /** Fewest windings first among those that turn the right way; retired ones (5 windings) last. */
    private List<MotorAdded> inOrder(EntryAdded entry, List<ModelAdded> models) {
        return MotorStore.ofTeam(tx, entry.team()).stream()
                .filter(motor -> models.isEmpty()
                        || models.stream().anyMatch(m -> m.direction().equals(motor.direction())))
                .sorted(java.util.Comparator.comparingInt(this::windings).thenComparing(MotorAdded::tag))
                .toList();
    }

    private int windings(MotorAdded motor) {
        return motor.uses() + AttemptStore.windingsOf(tx, motor.id());
    }

    private NowView.Choice choice(MotorAdded motor) {
        return new NowView.Choice(
                motor.id(),
                motor.tag() + " · " + motor.loopTyped() + " · " + motor.massTyped() + " · wound " + windings(motor)
                        + " times");
    }

    private NowView.Card underWay(AttemptNow attempt) {
        EntryAdded entry = today.entry(attempt.entryId());
        List<NowView.Line> lines = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        Optional<ModelAdded> model = Optional.ofNullable(attempt.modelId()).flatMap(id -> ModelStore.find(tx, id));
        model.ifPresent(m -> lines.add(new NowView.Line("model", m.name())));
        if (attempt.motorId() != null && attempt.state().isBeforeRelease()) {
            MotorStore.find(tx, attempt.motorId()).ifPresent(motor -> {
                PlanLines plan = PlanLines.of(tx, today.event(), motor, model.orElse(null));
                lines.addAll(plan.lines);
                warnings.addAll(plan.warnings);
            });
        }
        lines.add(new NowView.Line("watches", watches(attempt)));
        Optional<WindowAdded> window = today.window(entry);
        boolean before = attempt.state().isBeforeRelease();
        return new NowView.Card(
                entry.name() + ", attempt " + attempt.number(),
                attempt.state() == State.RELEASED
                        ? "in the air"
                        : attempt.state().word(),
                "the window closes in",
                before ? window.map(WindowAdded::closesAtMs).orElse(0L) : 0,
                entry.id(),
                attempt.id(),
                lines,
                cautions(attempt.state(), warnings),
                List.of(),
                List.of(),
                deeds(attempt.state()),
                "",
                newId.get());
    }

    private static List<String> cautions(State state, List<String> warnings) {
        List<String> all = new ArrayList<>(warnings);
        if (state == State.CALLED) {
            all.add("Eye protection for all in the lane's reach, nobody in line with either end: a broken motor flies"
                    + " past its ends. The venue's rules and the supervising adult come first.");
        }
        return all;
    }

    private String watches(AttemptNow attempt) {
        int taken = AttemptStore.watches(tx, attempt.id()).size();
        List<ReadingTaken> readings = AttemptStore.readings(tx, attempt.id());
        if (readings.isEmpty()) {
            return taken + " of " + today.event().timekeepers() + " ready";
        }
        return readings.stream()
                .map(r -> r.slot() + ": " + new FlightTime(r.durationMs()).text(2))
                .collect(java.util.stream.Collectors.joining(", "));
    }

    private List<NowView.Deed> deeds(State state) {
        return switch (state) {
            case CALLED -> List.of(move("Start winding", State.WINDING), move("Released", State.RELEASED));
            case WINDING -> List.of(move("Wound, holding", State.HOLDING));
            case HOLDING -> List.of(move("Released", State.RELEASED));
            case RELEASED -> List.of(move("Landed", State.LANDED));
            case LANDED -> List.of(new NowView.Deed("/attempt/close", newId.get(), "Take the official time", ""));
            case PLANNED, CLOSED, SCRUBBED, VOID -> List.of();
        };
    }

    private NowView.Deed move(String word, State to) {
        return new NowView.Deed("/attempt/move", newId.get(), word, to.word());
    }
}

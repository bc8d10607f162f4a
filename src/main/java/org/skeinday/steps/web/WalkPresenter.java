package org.skeinday.steps.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Direction;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.steps.Resumption;
import org.skeinday.steps.Run;
import org.skeinday.steps.RunFact;
import org.skeinday.steps.Skipped;
import org.skeinday.steps.Step;
import org.skeinday.steps.StepState;
import org.skeinday.steps.store.RunStore;
import org.skeinday.units.UnitSystem;

/** One walk through a list as one person's page shows it. */
final class WalkPresenter {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    private final Pause.Place place;
    private final UnaryOperator<String> nameOf;
    private final ZoneId zone;
    private final long nowMs;
    private final PlaceWords tape;
    private final UnitSystem units;
    private final Optional<Resumption> resumed;

    /** @param person who looks, null when nobody said so @param tape what the winding place was found to be */
    WalkPresenter(
            Pause.Place place,
            @Nullable String person,
            String device,
            UnaryOperator<String> nameOf,
            ZoneId zone,
            long nowMs,
            PlaceWords tape,
            UnitSystem units) {
        this.place = place;
        this.nameOf = nameOf;
        this.zone = zone;
        this.nowMs = nowMs;
        this.tape = tape;
        this.units = units;
        this.resumed = place.run().resumedBy(person, device, nowMs);
    }

    ChecksView.Walk walk() {
        Run run = place.run();
        return new ChecksView.Walk(
                run.list().id(),
                place.subject(),
                run.list().revision(),
                run.list().title(),
                place.about(),
                run.list().way().words(),
                resumed.map(Resumption::text).orElse(""),
                run.ending().orElse(""),
                run.list().aloud(),
                run.states().stream().map(this::item).toList());
    }

    private ChecksView.Item item(StepState state) {
        Step step = state.step();
        boolean again = resumed.filter(r -> r.askAgain().contains(step)).isPresent();
        Optional<RunFact> last = last(state);
        return new ChecksView.Item(
                step.id(),
                step.text(),
                step.reason(),
                step.critical(),
                again ? "open" : state.status().name().toLowerCase(java.util.Locale.ROOT),
                asks(step),
                unit(step.answer(), units),
                step.answer().under(units),
                said(state),
                notes(state, again),
                offers(step),
                last.map(RunFact::id).orElse(""),
                last.map(f -> f.atMs() + RunStore.PAUSES.undo().toMillis())
                        .filter(until -> until > nowMs)
                        .orElse(0L));
    }

    private static Optional<RunFact> last(StepState state) {
        return state.isDone()
                ? Optional.of(state.counted().get(state.counted().size() - 1).tick())
                : state.skip().map(RunFact.class::cast);
    }

    private String asks(Step step) {
        return switch (step.answer()) {
            case OK -> "ok";
            case DIRECTION -> "direction";
            case PLACE -> tape.isClear() ? "place" : "hall";
            default -> "text";
        };
    }

    private static String unit(ItemAnswer answer, UnitSystem units) {
        return switch (answer) {
            case NEWTONS -> "newtons held";
            case RATIO -> "motor turns to one crank turn";
            case LANE_LENGTH -> "length in " + units.roomUnit();
            case MASS -> "mass in " + units.massUnit();
            case LAUNCH_TORQUE -> "torque in " + units.torqueUnit();
            case COUNT -> "how many";
            default -> "";
        };
    }

    private List<ChecksView.Offer> offers(Step step) {
        return switch (step.answer()) {
            case DIRECTION ->
                Arrays.stream(Direction.values())
                        .map(way -> new ChecksView.Offer(way.word(), way.withArrow()))
                        .toList();
            case PLACE -> List.of(new ChecksView.Offer(tape.answer(), tape.words()));
            case RATIO ->
                tape.ratio()
                        .map(r -> List.of(new ChecksView.Offer(r, r + " to 1")))
                        .orElse(List.of());
            default -> List.of();
        };
    }

    private List<String> said(StepState state) {
        List<String> said = new ArrayList<>();
        state.counted()
                .forEach(c -> said.add(c.answer()
                                .map(WalkPresenter::answer)
                                .map(a -> a + " · ")
                                .orElse("")
                        + who(c.tick())));
        state.skip().map(this::skipped).ifPresent(said::add);
        return said;
    }

    private static String answer(String typed) {
        return Direction.WORDS.contains(typed) ? Direction.of(typed).words() : typed;
    }

    private String skipped(Skipped skip) {
        return "left out: " + skip.reason() + " · " + who(skip);
    }

    private String who(RunFact fact) {
        String person = fact.personId();
        String by = person == null ? (fact.device().equals("laptop") ? "laptop" : "a device") : nameOf.apply(person);
        return by + " " + clock(fact.atMs());
    }

    private String clock(long ms) {
        return CLOCK.format(Instant.ofEpochMilli(ms).atZone(zone));
    }

    private List<String> notes(StepState state, boolean again) {
        List<String> notes = new ArrayList<>();
        if (state.isOpen()) {
            state.reopened().ifPresent(r -> notes.add("Asked again since " + clock(r.atMs()) + ": " + r.reason()));
        } else if (again) {
            notes.add("Asked again: " + resumed.map(Resumption::reason).orElse("") + ".");
        }
        if (state.isInDoubt()) {
            notes.add("Two answers differ: look together, then correct one.");
        }
        if (state.step().answer() == ItemAnswer.PLACE && state.isOpen()) {
            notes.addAll(tape.findings());
        }
        if (state.step().answer() == ItemAnswer.NEWTONS && state.isOpen()) {
            tape.pull().ifPresent(notes::add);
        }
        return notes;
    }
}

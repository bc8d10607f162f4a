package org.skeinday.steps.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.Corrected;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.LineLast;
import org.skeinday.steps.Moment;
import org.skeinday.steps.PlaceSubject;
import org.skeinday.steps.Resumption;
import org.skeinday.steps.Run;
import org.skeinday.steps.Step;
import org.skeinday.steps.Ticked;
import org.skeinday.steps.store.RunStore;

/** Asks {@link LineLast} for a tick that comes in. */
final class BeforeTheLine {
    private final WoundAt places;

    BeforeTheLine(WoundAt places) {
        this.places = places;
    }

    /** Why it comes too early; empty when it is taken. @param subject of the run: the attempt, where the line is ticked */
    Optional<String> refuses(Tx tx, ActContext context, Run run, Ticked tick, String subject) {
        if (!tick.stepId().equals(Step.LINE)) {
            return Optional.empty();
        }
        List<Step> again = run.resumedBy(context.personOrNull(), context.device(), tick.atMs())
                .map(Resumption::askAgain)
                .orElse(List.of());
        Optional<Run> place =
                places.wind(tx, subject).map(wind -> RunStore.of(tx, Moment.WINDING_PLACE, wind.placeList()));
        return LineLast.refuses(place, run, tick.stepId(), again, passes(tx, subject));
    }

    /** A correction says again what was; where people stand is seen anew, and by nobody's memory. */
    static Optional<String> refuses(Run run, Corrected right) {
        boolean open =
                run.states().stream().anyMatch(state -> state.step().id().equals(right.stepId()) && state.isOpen());
        return right.done() && right.stepId().equals(Step.LINE) && open
                ? Optional.of("The line is looked at again, last before winding: tick it anew")
                : Optional.empty();
    }

    private List<GatePassed> passes(Tx tx, String attempt) {
        return places.wind(tx, attempt)
                .map(wind -> GateAsked.passes(tx, wind))
                .orElseGet(() -> RunStore.passes(tx, attempt));
    }

    /**
     * The line, asked again when this is ticked after it; nothing while whoever goes on is asked it anyway. What is ticked in
     * the list of a winding place opens it for each attempt that is called there.
     */
    List<Fact> opens(Tx tx, ActContext context, Run run, Ticked tick, String subject) {
        return opens(tx, context, run, tick.stepId(), tick.atMs(), subject);
    }

    /** The same when something critical turns out after it to have been done before. */
    List<Fact> opens(Tx tx, ActContext context, Run run, Corrected right, String subject) {
        return right.done() ? opens(tx, context, run, right.stepId(), right.atMs(), subject) : List.of();
    }

    private List<Fact> opens(Tx tx, ActContext context, Run run, String step, long atMs, String subject) {
        List<Fact> facts = new ArrayList<>();
        for (String attempt : attempts(tx, run, subject)) {
            facts.addAll(opensOf(tx, context, run, step, atMs, attempt));
        }
        return facts;
    }

    private List<String> attempts(Tx tx, Run run, String subject) {
        return switch (run.list().moment()) {
            case BEFORE_WINDING -> List.of(subject);
            case WINDING_PLACE -> {
                Optional<PlaceSubject> place = PlaceSubject.parse(subject);
                yield places.called(
                        tx, place.map(PlaceSubject::eventId).orElse(subject), place.map(PlaceSubject::stationId));
            }
            default -> List.of();
        };
    }

    private List<Fact> opensOf(Tx tx, ActContext context, Run ticked, String step, long atMs, String attempt) {
        boolean isItsOwn = ticked.list().moment() == Moment.BEFORE_WINDING;
        Run run = isItsOwn ? ticked : RunStore.of(tx, Moment.BEFORE_WINDING, attempt);
        if (!LineLast.opensAgain(ticked, run, step, atMs, passes(tx, attempt))) {
            return List.of();
        }
        List<Step> line = run.list().step(Step.LINE).stream().toList();
        return Began.reopened(context, run, attempt, line, LineLast.SEEN_TO_AFTER, atMs - 1);
    }
}

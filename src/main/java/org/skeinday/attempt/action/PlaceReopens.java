package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.hall.Judged;
import org.skeinday.hall.Verdict;
import org.skeinday.hall.store.HallStore;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Reopened;
import org.skeinday.steps.Reopening;
import org.skeinday.steps.Run;
import org.skeinday.steps.Step;
import org.skeinday.steps.StepState;
import org.skeinday.steps.action.Began;
import org.skeinday.steps.store.PlaceLists;
import org.skeinday.steps.store.RunStore;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

/** What a change of lane or motor opens again in the lists of the winding places: only what was done, each once. */
public final class PlaceReopens {
    private static final String ANOTHER = "it is wound at another place now";

    private PlaceReopens() {}

    /** As {@link org.skeinday.hall.action.Reopens} asks it: another lane opens all that is critical, at every winding place. */
    public static List<Fact> byPlace(Tx tx, ActContext context, @Nullable Judged before, @Nullable Judged now) {
        EventAdded event = EventStore.next(tx).orElse(null);
        if (event == null) {
            return List.of();
        }
        List<Fact> facts = new ArrayList<>();
        for (String subject : PlaceLists.all(tx, event.id())) {
            facts.addAll(byPlace(tx, context, new OfPlace(tx, subject), before, now));
        }
        return facts;
    }

    private static List<Fact> byPlace(
            Tx tx, ActContext context, OfPlace list, @Nullable Judged before, @Nullable Judged now) {
        if (before != null
                && (now == null || !before.place().id().equals(now.place().id()))) {
            return list.reopened(context, new LinkedHashSet<>(list.run().list().critical()), ANOTHER);
        }
        @Nullable Length stretch = TodaysStretch.longest(tx).orElse(null);
        if (now == null) {
            return List.of();
        }
        Verdict is = now.verdict(stretch);
        // Measured for the first time: what is not known now was not known before either.
        Verdict was = before == null ? new Verdict(List.of(), is.unknown()) : before.verdict(stretch);
        return opened(context, list, Reopening.of(was, is, list.run().list(), UnitSystem.METRIC));
    }

    /**
     * A motor that asks for more than all others; told once for each reason, then it is known.
     *
     * @param station the winding place at which it is to be wound; empty where none is prepared
     */
    static List<Fact> byMotor(
            Tx tx, ActContext context, String event, MotorAdded motor, Optional<StationAdded> station) {
        Judged place = HallStore.judged(tx, PlaceStore.inUse(tx).orElse(null));
        EventAdded next = EventStore.next(tx).orElse(null);
        if (next == null || !next.id().equals(event)) {
            return List.of();
        }
        var list = new OfPlace(
                tx, PlaceLists.subject(event, station.map(StationAdded::id).orElse(null)));
        List<Fact> facts = new ArrayList<>(byPull(tx, context, list, motor));
        if (place != null) {
            facts.addAll(byStretch(tx, context, list, new Called(place, motor)));
        }
        return facts;
    }

    /** The list of one winding place, as it stands. @param subject what it is about */
    private record OfPlace(Run run, String subject) {
        OfPlace(Tx tx, String subject) {
            this(RunStore.of(tx, Moment.WINDING_PLACE, subject), subject);
        }

        List<Fact> reopened(ActContext context, Set<Step> steps, String reason) {
            List<Step> done = run.done().stream().filter(steps::contains).toList();
            return Began.reopened(
                    context, run, subject, done, reason, context.now().toEpochMilli());
        }
    }

    private record Called(Judged place, MotorAdded motor) {}

    /** The mount was tested with less than this motor asks. */
    private static List<Fact> byPull(Tx tx, ActContext context, OfPlace list, MotorAdded motor) {
        double need = TodaysPull.testNewtons(tx, motor).orElse(0);
        Set<Step> weaker = list.run().states().stream()
                .filter(s -> s.isDone() && s.step().answer() == ItemAnswer.NEWTONS)
                .filter(s -> s.answer()
                        .map(Double::parseDouble)
                        .filter(n -> n < need)
                        .isPresent())
                .map(StepState::step)
                .collect(Collectors.toSet());
        return list.reopened(
                context,
                weaker,
                "Motor " + motor.tag() + " pulls harder than the mount was tested with: test it with "
                        + Math.round(need) + " N or more.");
    }

    private static List<Fact> byStretch(Tx tx, ActContext context, OfPlace list, Called called) {
        Judged place = called.place();
        MotorAdded motor = called.motor();
        Verdict was = place.verdict(TodaysStretch.longestBut(tx, motor).orElse(null));
        Verdict now = place.verdict(TodaysStretch.longestWith(tx, motor).orElse(null));
        List<Reopening> opened = Reopening.of(was, now, list.run().list(), UnitSystem.METRIC).stream()
                .filter(o -> !wasTold(list.run(), o))
                .toList();
        return opened(context, list, opened);
    }

    private static List<Fact> opened(ActContext context, OfPlace list, List<Reopening> reopenings) {
        return reopenings.stream()
                .flatMap(opened -> list.reopened(context, Set.of(opened.step()), opened.reason()).stream())
                .toList();
    }

    private static boolean wasTold(Run run, Reopening opening) {
        return run.facts().stream()
                .anyMatch(f -> f instanceof Reopened r
                        && r.stepId().equals(opening.step().id())
                        && r.reason().equals(opening.reason()));
    }
}
